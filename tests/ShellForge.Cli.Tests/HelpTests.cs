using System.CommandLine;
using ShellForge.Testing;

namespace ShellForge.Cli.Tests;

public class HelpTests
{
    public static TheoryData<string> Verbs =>
        [.. ShellForgeCommand.Root(new Workbench { Out = TextWriter.Null, Err = TextWriter.Null, Folder = "/" })
            .Subcommands.Select(v => v.Name), ""];

    [Theory]
    [MemberData(nameof(Verbs))]
    public void Help_is_the_accepted_text(string verb)
    {
        using var bench = new Bench();

        int exit = bench.Run(verb.Length == 0 ? ["--help"] : [verb, "--help"]);

        // The command is called after the running program, which here is the test host.
        string text = bench.Out.ReplaceLineEndings("\n").Replace(RootCommand.ExecutableName, "shellforge", StringComparison.Ordinal);
        Assert.Equal(0, exit);
        Assert.Equal(Golden.Text($"help/{(verb.Length == 0 ? "shellforge" : verb)}.txt", text), text);
    }

    [Fact]
    public void Every_option_and_argument_says_what_it_is()
    {
        RootCommand root = ShellForgeCommand.Root(new Workbench { Out = TextWriter.Null, Err = TextWriter.Null, Folder = "/" });
        foreach (Command verb in root.Subcommands)
        {
            Assert.False(string.IsNullOrWhiteSpace(verb.Description), verb.Name);
            Assert.All(verb.Options, option => Assert.False(string.IsNullOrWhiteSpace(option.Description), $"{verb.Name} {option.Name}"));
            Assert.All(verb.Arguments,
                argument => Assert.False(string.IsNullOrWhiteSpace(argument.Description), $"{verb.Name} {argument.Name}"));
        }
    }

    [Theory]
    [InlineData("chekc", "chekc")]
    [InlineData("make --formats obj board.yaml", "obj")]
    [InlineData("make", "make")]
    [InlineData("schema cable", "cable")]
    [InlineData("check board.yaml --wrong", "--wrong")]
    public void A_wrong_command_line_is_told_with_status_2(string line, string word)
    {
        using var bench = new Bench();

        int exit = bench.Run(line.Split(' '));

        Assert.Equal((int)ExitCode.BadInput, exit);
        Assert.Contains(word, bench.Err, StringComparison.Ordinal);
        Assert.Contains("--help", bench.Err, StringComparison.Ordinal);
        Assert.Empty(bench.Out);
    }

    [Fact]
    public void The_parser_completes_verbs_and_options()
    {
        using var bench = new Bench();

        bench.Run("[suggest:14]", "shellforge che");
        Assert.Contains("check", bench.Out.Split('\n'));

        bench.Run("[suggest:20]", "shellforge make --fo");
        Assert.Equal("--formats", bench.Out.Trim());
    }

    [Theory]
    [InlineData("bash")]
    [InlineData("zsh")]
    [InlineData("fish")]
    [InlineData("powershell")]
    public void There_is_a_completion_script_for(string shell)
    {
        using var bench = new Bench();

        Assert.Equal(0, bench.Run("completion", shell));
        Assert.Contains("[suggest:", bench.Out, StringComparison.Ordinal);
        Assert.DoesNotContain('\r', bench.Out);
    }
}
