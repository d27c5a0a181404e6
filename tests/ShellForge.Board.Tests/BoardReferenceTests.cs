using System.Text.Json;
using ShellForge.Board.Schema;
using ShellForge.Testing;

namespace ShellForge.Board.Tests;

public class BoardReferenceTests
{
    [Fact]
    public void The_page_in_the_docs_is_the_one_that_the_schema_gives()
    {
        string path = Repository.At("src", "docs", "board-file.md");
        if (Golden.Accepting)
        {
            File.WriteAllText(path, BoardReference.Text());
        }

        Assert.Equal(File.ReadAllText(path).ReplaceLineEndings("\n"), BoardReference.Text());
    }

    [Fact]
    public void Every_key_of_the_schema_has_a_row_with_what_it_takes_and_means()
    {
        string[] rows = [.. BoardReference.Text().Split('\n').Where(line => line.StartsWith("| `", StringComparison.Ordinal))];
        using var schema = JsonDocument.Parse(BoardSchema.Json());
        int keys = 0;
        Count(schema.RootElement);
        Assert.Equal(keys, rows.Length);
        Assert.All(rows, row => Assert.All(row.Split(" | "), cell => Assert.True(cell.Trim('|', ' ').Length > 0, row)));

        void Count(JsonElement element)
        {
            if (element.ValueKind == JsonValueKind.Object)
            {
                foreach (JsonProperty property in element.EnumerateObject())
                {
                    if (property.NameEquals("properties") && property.Value.ValueKind == JsonValueKind.Object)
                    {
                        keys += property.Value.EnumerateObject().Count();
                        foreach (JsonProperty key in property.Value.EnumerateObject())
                        {
                            Count(key.Value);
                        }
                    }
                    else
                    {
                        Count(property.Value);
                    }
                }
            }
            else if (element.ValueKind == JsonValueKind.Array)
            {
                // One of a kind and a list of them are told once.
                string[] all =
                [
                    .. element.EnumerateArray().Select(item => string.Concat(item.ToString().Where(c => !char.IsWhiteSpace(c)))),
                ];
                foreach ((JsonElement item, string text) in element.EnumerateArray().Zip(all))
                {
                    if (!all.Any(other => other.Contains($"\"items\":{text}", StringComparison.Ordinal)))
                    {
                        Count(item);
                    }
                }
            }
        }
    }
}
