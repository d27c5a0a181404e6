namespace ShellForge.Cli.Tests.Verbs;

public class CompareVerbTests
{
    [Fact]
    public void Two_revisions_differ_in_what_was_said_what_follows_and_the_parts_to_print_again()
    {
        using var bench = new Bench();
        File.WriteAllText(bench.Folder.File("a.yaml"), Bench.SmallBoard);
        File.WriteAllText(bench.Folder.File("b.yaml"),
            Bench.SmallBoard.Replace("closure: snap", "closure: snap\n  floor: 2.6", StringComparison.Ordinal));

        Assert.Equal(0, bench.Run("compare", "a.yaml", "b.yaml", "-o", "page.html"));
        string told = bench.Out;
        Assert.Contains("stack.floor 2 -> 2.6", told, StringComparison.Ordinal);
        Assert.Contains("its bytes changed: print it again", told, StringComparison.Ordinal);
        Assert.Contains("stack.floor", File.ReadAllText(bench.Folder.File("page.html")), StringComparison.Ordinal);

        // Made into folders they differ in the same; a file against its own folder in nothing, but for the name of the file.
        bench.Run("make", "a.yaml", "-o", "a", "-q");
        bench.Run("make", "b.yaml", "-o", "b", "-q");
        Assert.Equal(0, bench.Run("compare", "a", "b"));
        Assert.Equal(told, bench.Out);
        Assert.Equal(0, bench.Run("compare", "a", "a.yaml"));
        Assert.Equal("Nothing differs.\n", bench.Out);
        Assert.Equal(0, bench.Run("compare", "a", "a.yaml", "--set", "housing.floor=2.6", "--json"));
        Assert.Equal("stack.floor", bench.Json().GetProperty("said")[0].GetProperty("what").GetString());
    }

    [Fact]
    public void Make_tells_what_changed_since_the_last_report_in_its_folder()
    {
        using var bench = new Bench();
        File.WriteAllText(bench.Folder.File("a.yaml"), Bench.SmallBoard);
        bench.Run("make", "a.yaml", "-o", "a");
        Assert.DoesNotContain("Since the last report", bench.Out, StringComparison.Ordinal);
        bench.Run("make", "a.yaml", "-o", "a");
        Assert.DoesNotContain("Since the last report", bench.Out, StringComparison.Ordinal);

        bench.Run("make", "a.yaml", "-o", "a", "--set", "housing.floor=2.6");

        Assert.Contains("Since the last report in this folder:\n  stack.floor 2 -> 2.6", bench.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void What_cannot_be_compared_is_told()
    {
        using var bench = new Bench();
        File.WriteAllText(bench.Folder.File("a.yaml"), Bench.SmallBoard);
        File.WriteAllText(bench.Folder.File("b.yaml"), Bench.SmallBoard.Replace("disc", "disk", StringComparison.Ordinal));
        Directory.CreateDirectory(bench.Folder.File("empty"));

        Assert.Equal(2, bench.Run("compare", "a.yaml", "b.yaml"));
        Assert.Contains("b.yaml:4:", bench.Err, StringComparison.Ordinal);
        Assert.Equal(3, bench.Run("compare", "a.yaml", "empty"));
        Assert.Equal(3, bench.Run("compare", "a.yaml", "nothing"));
        File.WriteAllText(bench.Folder.File("empty/report.json"), "{\"format\": \"shellforge-report/1\", \"parts\": [3]}");
        Assert.Equal(3, bench.Run("compare", "a.yaml", "empty"));
    }
}
