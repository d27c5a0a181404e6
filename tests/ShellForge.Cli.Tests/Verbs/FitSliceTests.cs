namespace ShellForge.Cli.Tests.Verbs;

public sealed class FitSliceTests
{
    [Fact]
    public void A_fit_slice_of_a_board_is_written_with_its_check_list()
    {
        using var bench = new Bench();
        File.WriteAllText(bench.Folder.File("board.yaml"), Bench.SmallBoard);
        Assert.Equal(0, bench.Run("coupon", "fit-slice", "--board", "board.yaml", "-o", "c"));
        Assert.Equal(
            ["fit-slice-lid.stl", "fit-slice-tub.stl", "fit-slice-wall.stl", "fit-slice.3mf", "fit-slice.png", "fit-slice.txt"],
            Directory.EnumerateFiles(bench.Folder.File("c")).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        Assert.Contains("the screw must start by hand", bench.Out, StringComparison.Ordinal);
        Assert.Contains("ventilate", File.ReadAllText(bench.Folder.File("c/fit-slice.txt")), StringComparison.Ordinal);
    }

    [Fact]
    public void A_fit_slice_needs_a_board_and_is_a_print_of_its_own()
    {
        using var bench = new Bench();
        File.WriteAllText(bench.Folder.File("board.yaml"), Bench.SmallBoard);
        Assert.Equal(2, bench.Run("coupon", "fit-slice"));
        Assert.Contains("name its board file", bench.Err, StringComparison.Ordinal);
        Assert.Equal(2, bench.Run("coupon", "fit-slice", "lid-fit", "--board", "board.yaml"));
        Assert.Contains("ask for it alone", bench.Err, StringComparison.Ordinal);
    }

    [Fact]
    public void A_board_alone_picks_what_its_housing_depends_on_for_as_few_plates_as_hold_it()
    {
        using var bench = new Bench();
        File.WriteAllText(bench.Folder.File("board.yaml"), Bench.SmallBoard);
        Assert.Equal(0, bench.Run("coupon", "board.yaml", "-o", "c"));
        Assert.Contains("lid-fit: the cover goes on by its lip", bench.Out, StringComparison.Ordinal);
        Assert.Contains("diffuser-steps: its diffuser is printed of petg-white", bench.Out, StringComparison.Ordinal);
        Assert.Contains("snap-rings: the cover snaps on", bench.Out, StringComparison.Ordinal);
        string[] plates = [.. Directory.EnumerateFiles(bench.Folder.File("c"), "coupon*.3mf").Select(Path.GetFileName)!];
        Assert.Contains($"on {plates.Length} plates: ", bench.Out, StringComparison.Ordinal);
        Assert.Contains("coupon-petg-white.3mf", plates);
        Assert.Contains(plates, name => name.StartsWith("coupon-petg-black", StringComparison.Ordinal));
        string answers = File.ReadAllText(bench.Folder.File("c/answers.yaml"));
        Assert.Contains("kind: insert-holes", answers, StringComparison.Ordinal);
        Assert.Contains("kind: diffuser-steps\n    filament: petg-white\n", answers, StringComparison.Ordinal);
        Assert.Contains("of petg-white, ", File.ReadAllText(bench.Folder.File("c/coupon.txt")), StringComparison.Ordinal);
    }

    [Fact]
    public void A_board_says_printer_filament_and_insert_of_a_coupon()
    {
        using var bench = new Bench();
        File.WriteAllText(bench.Folder.File("board.yaml"), Bench.SmallBoard.Replace("petg-black", "pla-black", StringComparison.Ordinal));
        Assert.Equal(0, bench.Run("coupon", "insert-holes", "--board", "board.yaml", "-o", "c"));
        string answers = File.ReadAllText(bench.Folder.File("c/answers.yaml"));
        Assert.Contains("filament: pla-black", answers, StringComparison.Ordinal);
        Assert.Contains("insert: m2x3-od3.6", answers, StringComparison.Ordinal);
    }
}
