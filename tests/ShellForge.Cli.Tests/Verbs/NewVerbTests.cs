using ShellForge.Board.Schema;

namespace ShellForge.Cli.Tests.Verbs;

public class NewVerbTests
{
    [Theory]
    [InlineData("Tide lamp", "tide-lamp.yaml")]
    [InlineData("  Kai & Möwe #2  ", "kai-m-we-2.yaml")]
    [InlineData("../../up", "up.yaml")]
    public void A_name_becomes_a_file_in_this_folder(string name, string file)
    {
        using var bench = new Bench();

        Assert.Equal(0, bench.Run("new", name));
        Assert.Equal(
            new[] { EditorSchema.FileName, file }.Order(StringComparer.Ordinal),
            Directory.GetFiles(bench.Folder.Path).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void The_starter_board_reads_without_a_mistake()
    {
        using var bench = new Bench();
        bench.Run("new", "Quay \"light\": 1");

        // Reading fails before anything is made, so a stopped run that gets that far has read the file.
        Assert.Equal(130, bench.RunUnder(new CancellationToken(canceled: true), "check", "quay-light-1.yaml"));
        Assert.DoesNotContain("quay-light-1.yaml:", bench.Err, StringComparison.Ordinal);
    }

    [Fact]
    public void An_editor_finds_the_schema_by_the_first_line_of_the_file()
    {
        using var bench = new Bench();
        bench.Run("new", "Buoy");

        string first = File.ReadLines(bench.Folder.File("buoy.yaml")).First();
        Assert.StartsWith("# yaml-language-server: $schema=", first, StringComparison.Ordinal);
        Assert.Equal(BoardSchema.Json(), File.ReadAllText(bench.Folder.File(first.Split('=')[1])));
    }

    [Fact]
    public void A_file_that_is_there_stays()
    {
        using var bench = new Bench();
        bench.Folder.Write("buoy.yaml", "mine");

        Assert.Equal((int)ExitCode.BadInput, bench.Run("new", "Buoy"));
        Assert.Equal("mine", File.ReadAllText(bench.Folder.File("buoy.yaml")));
    }

    [Fact]
    public void A_name_without_letters_is_bad_input()
    {
        using var bench = new Bench();

        Assert.Equal((int)ExitCode.BadInput, bench.Run("new", "---"));
        Assert.Empty(bench.Folder.Snapshot());
    }
}
