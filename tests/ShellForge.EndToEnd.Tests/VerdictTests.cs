using System.Text.Json;
using ShellForge.Testing;

namespace ShellForge.EndToEnd.Tests;

/// <summary>What a script reads from the exit status is what a person reads from the report.</summary>
public class VerdictTests
{
    private const string Board = """
        format: shellforge/1
        name: Half said
        board:
          outline: {disc: 70}
          thickness: 1.6
          holes: [{circle: 62, count: 4, from: 45, diameter: 2.7}]
          pixels: {package: "2020", circle: 44, count: 16, from: 90}
        housing:
          # TODO housing.insert: guessed from the holes
          insert: m2.5x4-od4.6
          cable: none
          bore: open
        """;

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_file_with_a_line_still_to_do_is_never_print_it(bool strict)
    {
        using var folder = new TemporaryFolder();
        File.WriteAllText(Path.Combine(folder.Path, "half.yaml"), Board);
        string[] more = strict ? ["--strict"] : [];
        (int exit, string told) = CommandRun.Run(folder.Path, ["check", "half.yaml", "--json", .. more]);
        using JsonDocument json = JsonDocument.Parse(told);
        Assert.Equal(1, exit);
        Assert.Equal("do-not-print", json.RootElement.GetProperty("verdict").GetString());
        JsonElement todo = json.RootElement.GetProperty("findings").EnumerateArray()
            .Single(finding => finding.GetProperty("rule").GetString() == "still-to-say");
        Assert.Equal(9, todo.GetProperty("in_file").GetProperty("line").GetInt32());
        Assert.Contains("housing.insert", todo.GetProperty("message").GetString(), StringComparison.Ordinal);
        Assert.Empty(json.RootElement.GetProperty("diagnostics").EnumerateArray());

        (exit, told) = CommandRun.Run(folder.Path, ["check", "half.yaml", .. more]);
        Assert.Equal(1, exit);
        Assert.Contains("Do not print: 1 finding to clear first.", told, StringComparison.Ordinal);
    }

    [Fact]
    public void An_answer_on_the_command_line_settles_what_is_still_to_say()
    {
        using var folder = new TemporaryFolder();
        File.WriteAllText(Path.Combine(folder.Path, "half.yaml"), Board);
        (_, string told) = CommandRun.Run(folder.Path, "check", "half.yaml", "--json", "--set", "housing.insert=m2.5x4-od4.6");
        Assert.DoesNotContain("still-to-say", told, StringComparison.Ordinal);
        Assert.Contains("no-bore", told, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("half.yaml", "check")]
    [InlineData("half.yaml", "make")]
    public void Verdict_and_exit_status_agree(string file, string verb)
    {
        using var folder = new TemporaryFolder();
        File.WriteAllText(Path.Combine(folder.Path, file),
            Board.Replace("  # TODO housing.insert: guessed from the holes\n", "", StringComparison.Ordinal));
        foreach (bool strict in new[] { false, true })
        {
            (int exit, string told) = CommandRun.Run(folder.Path, [verb, file, "--json", .. strict ? ["--strict"] : Array.Empty<string>()]);
            using JsonDocument json = JsonDocument.Parse(told);
            JsonElement root = verb == "make" ? json.RootElement.GetProperty("report") : json.RootElement;

            // A key without effect is a warning.
            Assert.Equal("mind-warnings", root.GetProperty("verdict").GetString());
            Assert.Equal(strict ? 1 : 0, exit);
            Assert.Equal(exit, json.RootElement.GetProperty("exit").GetInt32());
        }
    }

    [Fact]
    public void Every_board_of_the_repository_has_an_exit_status_that_its_verdict_asks_for()
    {
        foreach (string path in Directory.GetFiles(Repository.At("tests", "boards", "valid"), "*.yaml").Order(StringComparer.Ordinal))
        {
            foreach (bool strict in new[] { false, true })
            {
                (int exit, string told) = CommandRun.Run(Path.GetDirectoryName(path)!,
                    ["check", Path.GetFileName(path), "--json", .. strict ? ["--strict"] : Array.Empty<string>()]);
                using JsonDocument json = JsonDocument.Parse(told);
                string verdict = json.RootElement.GetProperty("verdict").GetString()!;
                Assert.Equal(verdict == "do-not-print" || (strict && verdict == "mind-warnings") ? 1 : 0, exit);
                Assert.DoesNotMatch(@"\((Floor|Boss|Saddle|InsertHole|BaffleWall|Mount|[A-Z][a-z]+[A-Z][a-z]+) \d+\)", told);
            }
        }
    }
}
