namespace ShellForge.Cli.Tests.Verbs;

public sealed class CheckSinceLastTests
{
    private const string Part = "  parts:\n    - {ref: C1, size: [6, 6, 5], side: bottom, at: [0, 0]}\nhousing:";

    private static string Board(string revision, string at) =>
        Bench.SmallBoard.Replace("name: Buoy", $"name: Buoy\nrevision: {revision}", StringComparison.Ordinal)
            .Replace("housing:", Part.Replace("[0, 0]", at, StringComparison.Ordinal), StringComparison.Ordinal);

    [Fact]
    public void Check_names_what_moved_since_the_last_report_and_writes_nothing()
    {
        using var bench = new Bench();
        File.WriteAllText(bench.Folder.File("buoy.yaml"), Board("A", "[0, 0]"));
        bench.Run("make", "buoy.yaml", "-q");
        File.WriteAllText(bench.Folder.File("buoy.yaml"), Board("B", "[3, 0]"));
        IReadOnlyDictionary<string, string> before = bench.Folder.Snapshot();

        bench.Run("check", "buoy.yaml");

        Assert.Contains("Since the last report in 'housing':", bench.Out, StringComparison.Ordinal);
        Assert.Contains("board.revision A -> B", bench.Out, StringComparison.Ordinal);
        Assert.Contains("board.C1 x 0, y 0, bottom, turned 0 -> x 3, y 0, bottom, turned 0", bench.Out, StringComparison.Ordinal);
        Assert.Equal(before, bench.Folder.Snapshot());
    }

    [Fact]
    public void The_command_that_tells_all_names_the_board_as_one_word()
    {
        using var bench = new Bench();
        File.WriteAllText(bench.Folder.File("my buoy.yaml"), Board("A", "[0, 0]"));
        bench.Run("make", "my buoy.yaml", "-q", "-o", "last one");

        // More changes than are listed.
        File.WriteAllText(bench.Folder.File("my buoy.yaml"), Board("B", "[3, 0]").Replace("disc: 40", "disc: 48", StringComparison.Ordinal)
            .Replace("closure: snap", "closure: screws", StringComparison.Ordinal));

        bench.Run("check", "my buoy.yaml", "--last", "last one");

        Assert.Contains("shellforge compare 'last one' 'my buoy.yaml' tells all", string.Join(' ', bench.Out.Split((char[]?)null,
            StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_that_is_named_must_have_a_report()
    {
        using var bench = new Bench();
        File.WriteAllText(bench.Folder.File("buoy.yaml"), Bench.SmallBoard);

        Assert.Equal(3, bench.Run("check", "buoy.yaml", "--last", "nowhere"));
        Assert.Contains("no report", bench.Err, StringComparison.Ordinal);
        bench.Run("check", "buoy.yaml");
        Assert.DoesNotContain("Since", bench.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--json")]
    [InlineData("--quiet")]
    public void What_changed_is_asked_for_where_it_can_be_told(string silent)
    {
        using var bench = new Bench();
        File.WriteAllText(bench.Folder.File("buoy.yaml"), Bench.SmallBoard);

        Assert.NotEqual(0, bench.Run("check", "buoy.yaml", "--last", ".", silent));
        Assert.Contains("compare DIR BOARD --json", bench.Err, StringComparison.Ordinal);
    }
}
