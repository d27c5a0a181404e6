using System.Text.RegularExpressions;
using ShellForge.Testing;

namespace ShellForge.EndToEnd.Tests;

/// <summary>A newcomer who copies the README line by line ends with a lamp, and every recipe of the cookbook is one.</summary>
public partial class ReadmeTests
{
    [GeneratedRegex("^```(?<kind>\\w+)\\n(?<text>.*?)^```", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex Block();

    [GeneratedRegex("Save it as `(?<name>[^`]+)`")]
    private static partial Regex FileName();

    [GeneratedRegex("^\\| Linux .*`(?<command>[^`]+)` \\|$", RegexOptions.Multiline)]
    private static partial Regex InstallOnLinux();

    [GeneratedRegex("\"[^\"]*\"|\\S+")]
    private static partial Regex Word();

    private static (string Board, List<string[]> Commands, string[] Told) Read()
    {
        string readme = File.ReadAllText(Repository.At("README.md")).ReplaceLineEndings("\n");
        ILookup<string, string> blocks = Block().Matches(readme).ToLookup(m => m.Groups["kind"].Value, m => m.Groups["text"].Value);
        List<string[]> commands =
        [
            .. blocks["sh"].SelectMany(text => text.Split('\n', StringSplitOptions.RemoveEmptyEntries))
                .Select(line => Word().Matches(line).Select(word => word.Value.Trim('"')).ToArray()),
        ];
        Assert.All(commands, words => Assert.Equal("shellforge", words[0]));
        return (Assert.Single(blocks["yaml"]), commands, Assert.Single(blocks["text"]).Split('\n', StringSplitOptions.RemoveEmptyEntries));
    }

    public static TheoryData<string> Recipes =>
    [
        .. File.ReadLines(Repository.At("src", "docs", "cookbook.md"))
            .Where(line => line.StartsWith("    shellforge", StringComparison.Ordinal)).Select(line => line.Trim()),
    ];

    [Theory]
    [MemberData(nameof(Recipes))]
    public void A_recipe_of_the_cookbook_gives_a_housing_to_print(string line)
    {
        using var folder = new TemporaryFolder();
        (string board, List<string[]> commands, _) = Read();
        folder.Write("harbour-light.yaml", board);
        string[] words = [.. Word().Matches(line).Select(word => word.Value.Trim('"'))];
        Assert.Equal(["shellforge", "make", "harbour-light.yaml"], words[..3]);
        Assert.Equal("-o", words[^2]);

        // The capacitor where it belongs, as the README has it in the end.
        string[] moved = [.. commands[1].SkipWhile(word => word != "--set").Take(2)];
        (int exit, string told) = CommandRun.Run(folder.Path, ["check", .. words[2..^2], .. moved]);
        Assert.True(exit == 0, told);
    }

    [Fact]
    public void Its_board_its_finding_and_its_lamp_are_what_the_program_makes()
    {
        using var folder = new TemporaryFolder();
        (string board, List<string[]> commands, string[] told) = Read();
        string readme = File.ReadAllText(Repository.At("README.md"));
        folder.Write(FileName().Match(readme).Groups["name"].Value, board);
        Assert.Equal(["check", "make"], commands.Select(words => words[1]));

        (int exit, string first) = CommandRun.Run(folder.Path, commands[0][1..]);
        Assert.True(exit == 1, first);
        Assert.All(told, line => Assert.Contains(line, first, StringComparison.Ordinal));

        (int made, string last) = CommandRun.Run(folder.Path, commands[1][1..]);
        Assert.True(made == 0, last);
        foreach (string name in (string[])["tub.stl", "cover.stl", "report.html"])
        {
            Assert.True(File.Exists(Path.Combine(folder.Path, "harbour-light", name)), name);
        }
    }

    /// <summary>As a newcomer does it: the archive of the release in a folder, a shell, nothing else but tools.</summary>
    [SkippableFact]
    public void Copied_line_by_line_into_a_terminal_it_ends_with_a_lamp()
    {
        string? archive = Environment.GetEnvironmentVariable("SHELLFORGE_ARCHIVE");
        Skip.If(string.IsNullOrEmpty(archive), "SHELLFORGE_ARCHIVE does not name the archive of a release");
        using var home = new TemporaryFolder();
        File.Copy(archive!, home.File(Path.GetFileName(archive!)));
        string readme = File.ReadAllText(Repository.At("README.md")).ReplaceLineEndings("\n");
        home.Write(FileName().Match(readme).Groups["name"].Value, Read().Board);
        string[] lines = [
            InstallOnLinux().Match(readme).Groups["command"].Value,
            .. Block().Matches(readme).Where(m => m.Groups["kind"].Value == "sh")
                .SelectMany(m => m.Groups["text"].Value.Split('\n', StringSplitOptions.RemoveEmptyEntries)),
        ];

        // Each line tells its status, as a prompt would: the first look finds something, as the README says.
        string script = string.Concat(lines.Select(line => $"{line}\necho \"status $?\"\n"));
        ForeignRun typed = ForeignRun.Of("env", home.Path, ["-i", $"HOME={home.Path}", "PATH=/usr/bin:/bin", "bash", "-c", script]);

        string[] statuses = [.. typed.Told.Split('\n').Where(line => line.StartsWith("status ", StringComparison.Ordinal))];
        Assert.True(statuses is ["status 0", "status 1", "status 0"], typed.Told);
        foreach (string name in (string[])["tub.stl", "cover.stl", "report.html"])
        {
            Assert.True(File.Exists(Path.Combine(home.Path, "harbour-light", name)), typed.Told);
        }
    }
}
