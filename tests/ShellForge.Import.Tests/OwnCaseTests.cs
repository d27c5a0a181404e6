using System.Text.Json;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml;
using ShellForge.Import.Files;
using ShellForge.Import.Writing;

namespace ShellForge.Import.Tests;

/// <summary>Our own small cases, one trait each, against the numbers they were made with.</summary>
public class OwnCaseTests
{
    private static readonly ProfileLibrary Profiles = ProfileLibrary.Load([]).Library;

    public static TheoryData<string> Names =>
        [.. Directory.EnumerateDirectories(SharedBoards.Own).Select(d => Path.GetFileName(d)!).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_trait_reads_as_it_was_made(string name)
    {
        string folder = Path.Combine(SharedBoards.Own, name);
        using JsonDocument document = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "expected.json")));
        JsonElement expected = document.RootElement;
        ImportResult result = SharedBoards.Import(folder, new ImportOptions { Profiles = Profiles });
        string told = string.Join('\n', result.Diagnostics.Select(d => $"{d.Severity} {d.Code} {d}"));
        if (expected.TryGetProperty("refused", out JsonElement refused))
        {
            Assert.True(result.Diagnostics.Any(d => d.IsError && d.Code == refused.GetString()), told);
            Assert.True(!expected.TryGetProperty("says", out JsonElement says)
                || told.Contains(says.GetString()!, StringComparison.Ordinal), told);
            return;
        }

        Assert.False(result.IsRefused, told);
        using JsonDocument read = JsonDocument.Parse(ImportJson.Text(result));
        var comparison = new CaseComparison(expected, read.RootElement);
        comparison.Run();
        Assert.True(comparison.Checked > 0);
        Assert.True(comparison.Wrong.Count == 0, string.Join('\n', comparison.Wrong) + "\n" + told);
        foreach (string code in Strings(expected, "warns"))
        {
            Assert.True(result.Diagnostics.Any(d => d.Code == code && d.Severity == Board.Diagnostics.DiagnosticSeverity.Warning),
                $"no warning {code}\n{told}");
        }

        string board = BoardFileWriter.Text(result);
        Assert.All(Strings(expected, "board"), part => Assert.Contains(part, board, StringComparison.Ordinal));
        Assert.All(Strings(expected, "boardnot"), part => Assert.DoesNotContain(part, board, StringComparison.Ordinal));

        // What is written is read: only the lines still to do are told.
        BoardReadResult back = BoardFileReader.Read("board.yaml", board, Profiles, []);
        Assert.True(back.File is not null, string.Join('\n', back.Diagnostics) + "\n" + board);
        Assert.All(back.Diagnostics, d => Assert.Contains(d.Code, new[] { "still-to-say", "height-unknown", "pixel-past-edge" }));
    }

    private static IEnumerable<string> Strings(JsonElement element, string name) =>
        element.TryGetProperty(name, out JsonElement list) ? list.EnumerateArray().Select(s => s.GetString()!) : [];
}
