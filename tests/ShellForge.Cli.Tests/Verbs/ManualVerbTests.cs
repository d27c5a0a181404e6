using System.Text.RegularExpressions;
using ShellForge.Testing;

namespace ShellForge.Cli.Tests.Verbs;

public class ManualVerbTests
{
    [Fact]
    public void The_manual_has_every_verb_option_and_exit_status()
    {
        using var bench = new Bench();

        Assert.Equal(0, bench.Run("manual"));

        string page = bench.Out.Replace("\\-", "-", StringComparison.Ordinal);
        var root = ShellForgeCommand.Root(new Workbench { Out = TextWriter.Null, Err = TextWriter.Null, Folder = "/" });
        Assert.All(root.Subcommands, verb => Assert.Contains($".SS {verb.Name}", page, StringComparison.Ordinal));
        Assert.All(root.Subcommands.SelectMany(verb => verb.Options),
            option => Assert.Contains($"\\fB{option.Name}\\fR", page, StringComparison.Ordinal));
        Assert.All(Enum.GetValues<ExitCode>(), code => Assert.Contains($".TP\n.B {(int)code}\n", page, StringComparison.Ordinal));
        Assert.DoesNotMatch(new Regex(@"^\.(?!TH|SH|SS|TP|B |I )", RegexOptions.Multiline), page);
    }

    [Fact]
    public void The_readme_has_every_exit_status_in_the_same_words()
    {
        string readme = File.ReadAllText(Repository.At("README.md"));

        Assert.Equal(Enum.GetValues<ExitCode>(), ExitCodes.Meanings.Select(each => each.Code));
        Assert.All(ExitCodes.Meanings,
            each => Assert.Contains($"| {(int)each.Code} | {each.Meaning} |\n", readme, StringComparison.Ordinal));
    }
}
