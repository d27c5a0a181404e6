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
        Assert.Equal(file, Path.GetFileName(Assert.Single(Directory.GetFiles(bench.Folder.Path))));
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
