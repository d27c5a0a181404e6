using System.Text.Json.Nodes;
using ShellForge.Board.Schema;
using ShellForge.Board.Yaml;
using ShellForge.Testing;

namespace ShellForge.Board.Tests;

public class SchemaTests
{
    // Faults of the file's shape: an editor's schema must see them too. All others need profiles, geometry or a second file.
    private static readonly HashSet<string> OfShape =
    [
        "unknown-key", "missing-key", "conflicting-keys", "wrong-kind", "unknown-word", "out-of-range", "wrong-count", "empty-text",
        "unknown-unit",
    ];

    private static readonly JsonNode Schema = JsonNode.Parse(BoardSchema.Json())!;

    private static readonly SchemaJudge Judge = new(BoardSchema.Json());

    // Every key of the format at least once, between these files.
    private static readonly string[] Whole =
        [.. Directory.GetFiles(BoardTexts.Folder("tests", "boards", "valid"), "*.yaml").Order(StringComparer.Ordinal)];

    [Theory]
    [InlineData("mooring-beacon")]
    [InlineData("tide-lamp")]
    [InlineData("dome-dial")]
    public void The_schema_accepts_the_samples(string name) =>
        Assert.True(Judge.Accepts(YamlAsJson.Of(BoardTexts.Sample(name))));

    [Fact]
    public void The_schema_accepts_the_valid_files_and_the_starter()
    {
        Assert.All(Whole, file => Assert.True(Judge.Accepts(YamlAsJson.Of(File.ReadAllText(file))), file));
        Assert.True(Judge.Accepts(YamlAsJson.Of(StarterBoard.Text("A"))));
    }

    [Theory]
    [InlineData("faults", 80)]
    [InlineData("print", 3)]
    public void The_schema_accepts_every_board_that_the_reader_accepts(string folder, int fewest)
    {
        int accepted = 0;
        foreach (string file in Directory.GetFiles(BoardTexts.Folder("tests", "boards", folder), "*.yaml", SearchOption.AllDirectories)
            .Order(StringComparer.Ordinal))
        {
            string text = File.ReadAllText(file);
            if (BoardTexts.Read(text).Diagnostics.All(d => !d.IsError))
            {
                Assert.True(Judge.Accepts(YamlAsJson.Of(text)), file);
                accepted++;
            }
        }

        Assert.True(accepted >= fewest, $"only {accepted} boards");
    }

    [Fact]
    public void The_schemas_are_schemas_of_the_draft_that_they_name()
    {
        Assert.True(SchemaJudge.IsSchema(BoardSchema.Json()));
        Assert.True(SchemaJudge.IsSchema(BoardSchema.ProfilesJson()));
        Assert.False(
            SchemaJudge.IsSchema("""{"$schema": "https://json-schema.org/draft/2020-12/schema", "type": "words", "minItems": -1}"""));
    }

    [Fact]
    public void The_reader_accepts_the_valid_files() =>
        Assert.All(Whole, file => Assert.DoesNotContain(BoardTexts.Read(File.ReadAllText(file)).Diagnostics, d => d.IsError));

    [Fact]
    public void Every_key_of_the_schema_is_used_by_a_file_that_the_reader_accepts()
    {
        var all = new SortedSet<string>(StringComparer.Ordinal);
        var used = new SortedSet<string>(StringComparer.Ordinal);
        string[] texts = [.. Whole.Select(File.ReadAllText), BoardTexts.Sample("mooring-beacon")];
        Keys(Schema, [.. texts.Select(YamlAsJson.Of)], all, used);

        Assert.True(all.Count > 120, $"{all.Count} keys");
        Assert.Empty(all.Except(used));
    }

    [Fact]
    public void A_fault_of_shape_is_one_to_both_and_a_file_right_to_the_reader_is_right_to_the_schema()
    {
        int shape = 0;
        foreach (string file in Directory.GetFiles(BoardTexts.Folder("tests", "boards", "broken"), "*.yaml").Order(StringComparer.Ordinal))
        {
            string text = File.ReadAllText(file);
            BoardReadResult read = BoardTexts.Read(text);
            string[] codes = [.. read.Diagnostics.Where(d => d.IsError).Select(d => d.Code)];
            if (!codes.All(OfShape.Contains)
                || read.Diagnostics.Any(
                    d => d.Message.Contains("'1.6 in'", StringComparison.Ordinal)
                        || d.Message.Contains("place 25", StringComparison.Ordinal)
                            || d.Message.Contains("thickness of the wire", StringComparison.Ordinal)
                                || d.Message.Contains("not said where", StringComparison.Ordinal)))
            {
                continue;
            }

            shape++;
            Assert.False(Judge.Accepts(YamlAsJson.Of(text)), file);
        }

        Assert.True(shape >= 10);
    }

    [Fact]
    public void A_key_that_no_form_has_is_refused_by_both_wherever_it_stands()
    {
        int tried = 0;
        foreach (string file in Whole)
        {
            string[] lines = File.ReadAllLines(file);
            for (int i = 0; i < lines.Length; i++)
            {
                int brace = lines[i].IndexOf('{', StringComparison.Ordinal);
                if (brace < 0 || lines[i].TrimStart().StartsWith('#'))
                {
                    continue;
                }

                string[] changed = [.. lines];
                changed[i] = lines[i].Insert(brace + 1, "zzz: 1, ");
                string text = string.Join('\n', changed);
                Assert.Contains(BoardTexts.Read(text).Diagnostics,
                    d => d.Code == "unknown-key" && d.Line == i + 1 && d.Column == brace + 2);
                Assert.False(Judge.Accepts(YamlAsJson.Of(text)), $"{file}:{i + 1}");
                tried++;
            }
        }

        Assert.True(tried > 30);
    }

    [Fact]
    public void The_schema_of_profile_files_accepts_the_shipped_ones()
    {
        var schema = new SchemaJudge(BoardSchema.ProfilesJson());
        Assert.All(
            Directory.GetFiles(BoardTexts.Folder("profiles"), "*.yaml"),
            file => Assert.True(schema.Accepts(YamlAsJson.Of(File.ReadAllText(file))), file));
    }

    // Walks schema and values side by side and notes each key as "what it belongs to: key".
    private static void Keys(JsonNode schema, List<JsonNode?> values, SortedSet<string> all, SortedSet<string> used)
    {
        foreach (JsonNode? option in schema["anyOf"]?.AsArray() ?? [])
        {
            Keys(option!, values, all, used);
        }

        if (schema["items"] is { } items)
        {
            Keys(items, [.. values.OfType<JsonArray>().SelectMany(a => a)], all, used);
        }

        foreach ((string key, JsonNode? own) in schema["properties"]?.AsObject() ?? [])
        {
            string name = $"{schema["title"]}: {key}";
            List<JsonNode?> below = [.. values.OfType<JsonObject>().Where(o => o.ContainsKey(key)).Select(o => o[key])];
            all.Add(name);
            if (below.Count > 0)
            {
                used.Add(name);
            }

            Keys(own!, below, all, used);
        }
    }
}
