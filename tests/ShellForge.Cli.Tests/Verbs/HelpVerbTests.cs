using ShellForge.Cli.Verbs;
using ShellForge.Testing;

namespace ShellForge.Cli.Tests.Verbs;

public class HelpVerbTests
{
    public static TheoryData<string> Topics => [.. HelpVerb.Topics];

    [Fact]
    public void Without_a_topic_it_lists_every_page_of_the_docs_with_its_title()
    {
        using var bench = new Bench();
        Assert.Equal(0, bench.Run("help"));

        string[] pages =
            [.. Directory.GetFiles(Repository.At("src", "docs"), "*.md").Select(path => Path.GetFileNameWithoutExtension(path)!)];
        Assert.Equal(pages.Order(StringComparer.Ordinal), HelpVerb.Topics.Order(StringComparer.Ordinal));
        Assert.All(pages, page => Assert.Contains($"{page} ", bench.Out, StringComparison.Ordinal));
        Assert.Contains("When something does not fit", bench.Out, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Topics))]
    public void A_page_fits_a_terminal_and_shows_no_marks_of_its_language(string topic)
    {
        using var told = new StringWriter { NewLine = "\n" };
        Assert.Equal(0, ShellForgeCommand.Run(["help", topic],
            new Workbench { Out = told, Err = told, Folder = Repository.Root, TerminalWidth = 80 }));
        string text = told.ToString();

        string[] lines = text.Split('\n');
        Assert.True(lines.Length > 20, text);
        Assert.All(lines.Where(line => !line.StartsWith("    ", StringComparison.Ordinal)), line => Assert.InRange(line.Length, 0, 80));
        Assert.DoesNotContain("](", text, StringComparison.Ordinal);
        Assert.DoesNotContain("| ---", text, StringComparison.Ordinal);
        Assert.DoesNotContain("```", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_verb_shows_its_own_help()
    {
        using var bench = new Bench();
        bench.Run("make", "--help");
        string wanted = bench.Out;
        using var other = new Bench();

        Assert.Equal(0, other.Run("help", "make"));
        Assert.Equal(wanted, other.Out);
    }

    [Fact]
    public void A_wrong_topic_names_the_nearest()
    {
        using var bench = new Bench();
        Assert.Equal((int)ExitCode.BadInput, bench.Run("help", "trubleshooting"));
        Assert.Contains("did you mean troubleshooting?", bench.Err, StringComparison.Ordinal);
    }
}
