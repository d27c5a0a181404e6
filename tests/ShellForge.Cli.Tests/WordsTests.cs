using ShellForge.Output.Words;

namespace ShellForge.Cli.Tests;

public class WordsTests
{
    [Theory]
    [InlineData("chek board.yaml", "there is no verb 'chek'; did you mean check?")]
    [InlineData("make", "make needs a board file")]
    [InlineData("check board.yaml --jsn", "there is no option --jsn here; did you mean --json?")]
    [InlineData("check one.yaml two.yaml", "'two.yaml' is one word too many for check")]
    [InlineData("make board.yaml -o", "--output needs a value: Folder to write into")]
    [InlineData("rules dots-sho", "did you mean dots-show?")]
    [InlineData("schema repport", "'repport' is none of board, ")]
    [InlineData("schema repport", "did you mean report?")]
    [InlineData("sweep plan.yaml --script slurmy", "'slurmy' is none of kubernetes, parallel, slurm; did you mean slurm?")]
    [InlineData("compare lamp.yaml", "compare needs B, the folder or board file to compare with it")]
    [InlineData("profiles m2.5x4-od4.66", "did you mean m2.5x4-od4.6?")]
    public void A_wrong_command_line_is_told_in_our_own_words(string line, string told)
    {
        using var bench = new Bench();

        Assert.Equal((int)ExitCode.BadInput, bench.Run(line.Split(' ')));
        Assert.Contains(told, bench.Err, StringComparison.Ordinal);
        Assert.DoesNotContain("Required", bench.Err, StringComparison.Ordinal);
        Assert.DoesNotContain("not recognized", bench.Err, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_verb_all_verbs_are_listed()
    {
        using var bench = new Bench();

        Assert.Equal((int)ExitCode.BadInput, bench.Run());
        Assert.All(new[] { "which verb?", "make", "check", "rules" }, word => Assert.Contains(word, bench.Err, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(20)]
    [InlineData(38)]
    [InlineData(80)]
    public void Lines_keep_to_the_width_and_lose_no_word(int width)
    {
        const string text = "its bore is taken as 46.0 mm as written, and rings of one name differ by more than that";

        string[] lines = [.. WrappedText.Lines(text, width, "note  ", 6)];

        Assert.All(lines, line => Assert.True(line.Length <= width, line));
        Assert.All(lines.Skip(1), line => Assert.StartsWith("      ", line, StringComparison.Ordinal));
        Assert.Equal("note  " + text, string.Join(' ', lines.Select((line, i) => i == 0 ? line : line.Trim())));
    }

    [Fact]
    public void A_rule_is_explained_with_its_source_and_the_way_to_accept_it()
    {
        using var bench = new Bench();

        Assert.Equal(0, bench.Run("rules", "no-finger-room"));
        Assert.All(
            new[] { "Measured:", "Source:", "- {rule: no-finger-room, why: \"...\"}" },
            word => Assert.Contains(word, bench.Out, StringComparison.Ordinal));

        Assert.Equal(0, bench.Run("rules", "twist-cannot-turn"));
        Assert.Contains("- {rule: twist-cannot-turn", bench.Out, StringComparison.Ordinal);

        Assert.Equal(0, bench.Run("rules", "audit-failed"));
        Assert.Contains("can't be accepted", bench.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("petg", "petg-black", "m2.5x4-od4.6")]
    [InlineData("insert", "m2.5x4-od4.6", "petg-black")]
    [InlineData("M2.5X4", "m2.5x4-od4.6", "m3x4-od5.0")]
    public void Profiles_are_found_by_kind_or_by_a_part_of_their_name(string word, string found, string other)
    {
        using var bench = new Bench();

        Assert.Equal(0, bench.Run("profiles", word));
        Assert.Contains(found, bench.Out, StringComparison.Ordinal);
        Assert.DoesNotContain(other, bench.Out, StringComparison.Ordinal);
    }
}
