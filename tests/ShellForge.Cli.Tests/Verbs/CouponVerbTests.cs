namespace ShellForge.Cli.Tests.Verbs;

public sealed class CouponVerbTests
{
    [Fact]
    public void Without_a_kind_all_kinds_are_listed()
    {
        using var bench = new Bench();
        Assert.Equal(0, bench.Run("coupon"));
        Assert.Contains("insert-holes", bench.Out, StringComparison.Ordinal);
        Assert.Empty(Directory.EnumerateFileSystemEntries(bench.Folder.Path));
    }

    [Fact]
    public void A_coupon_is_written_with_its_prints_its_picture_its_sheet_and_a_file_to_fill_in()
    {
        using var bench = new Bench();
        Assert.Equal(0, bench.Run("coupon", "slot-fit", "-o", "c"));
        Assert.Equal(
            ["answers.yaml", "coupon.3mf", "coupon.txt", "slot-fit-slots.stl", "slot-fit-tongue.stl", "slot-fit.png"],
            Directory.EnumerateFiles(bench.Folder.File("c")).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        Assert.Contains("fits:\n", File.ReadAllText(bench.Folder.File("c/answers.yaml")), StringComparison.Ordinal);
        Assert.Contains("slides in under light pressure", File.ReadAllText(bench.Folder.File("c/coupon.txt")), StringComparison.Ordinal);
    }

    [Fact]
    public void All_that_is_wrong_with_a_wish_is_told_and_nothing_is_written()
    {
        using var bench = new Bench();
        Assert.Equal(2, bench.Run("coupon", "insert-holes", "slot-fitt", "--printer", "fdm-0.44", "-o", "c"));
        Assert.Contains("there is no coupon 'slot-fitt'", bench.Err, StringComparison.Ordinal);
        Assert.Contains("did you mean 'fdm-0.4'?", bench.Err, StringComparison.Ordinal);
        Assert.False(Directory.Exists(bench.Folder.File("c")));
    }

    [Fact]
    public void A_second_board_file_is_told_and_one_that_is_not_there_too()
    {
        using var bench = new Bench();
        bench.Folder.Write("my board.yaml", Bench.SmallBoard);

        Assert.Equal(2, bench.Run("coupon", "my board.yaml", "other.yaml"));
        Assert.Contains("'other.yaml' is a second board file", bench.Err, StringComparison.Ordinal);
        Assert.Equal(3, bench.Run("coupon", "missing.yaml"));
        Assert.Contains("missing.yaml", bench.Err, StringComparison.Ordinal);
        Assert.Equal(["my board.yaml"], bench.Folder.Snapshot().Keys);
    }

    [Fact]
    public void A_coupon_of_more_than_half_an_hour_says_so()
    {
        using var bench = new Bench();
        Assert.Equal(0, bench.Run("coupon", "slot-fit", "layer-fit", "--printer", "fdm-0.4-fine", "-o", "c"));
        string[] lines = bench.Out.Split('\n');
        Assert.EndsWith("longer than half an hour on fdm-0.4-fine", lines[0], StringComparison.Ordinal);
        Assert.DoesNotContain("half an hour", lines[1], StringComparison.Ordinal);
        Assert.StartsWith("in one print: ", lines[2], StringComparison.Ordinal);
        Assert.Contains("longer than half an hour on this printer", File.ReadAllText(bench.Folder.File("c/coupon.txt")),
            StringComparison.Ordinal);
    }

    [Fact]
    public void Openings_ask_for_the_plug_and_take_the_boards()
    {
        using var bench = new Bench();
        Assert.Equal(2, bench.Run("coupon", "plug-openings", "-o", "c"));
        Assert.Contains("name the connector that your plug goes into", bench.Err, StringComparison.Ordinal);
        Assert.Equal(2, bench.Run("coupon", "plug-openings", "--plug", "0603", "-o", "c"));
        Assert.Equal(0, bench.Run("coupon", "plug-openings", "--plug", "usb-c-receptacle", "-o", "c"));
        Assert.Contains("plug: usb-c-receptacle", File.ReadAllText(bench.Folder.File("c/answers.yaml")), StringComparison.Ordinal);
    }

    [Fact]
    public void Insert_holes_ask_for_the_insert()
    {
        using var bench = new Bench();
        Assert.Equal(2, bench.Run("coupon", "insert-holes", "-o", "c"));
        Assert.Contains("name the insert in your drawer by its body", bench.Err, StringComparison.Ordinal);
        Assert.Equal(2, bench.Run("coupon", "insert-holes", "--insert", "m2-pan", "-o", "c"));
        Assert.Contains("'m2-pan' is a screw, not an insert", bench.Err, StringComparison.Ordinal);
    }
}
