using ShellForge.Board.Description;
using ShellForge.Board.Yaml;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Tests;

/// <summary>Arcs and grids of LEDs, holes and parts.</summary>
public class PatternTests
{
    private const double Near = 1e-9;

    [Fact]
    public void An_arc_is_a_circle_with_a_step_and_keeps_the_circles_pitch()
    {
        PixelCircle arc =
            Board(pixels: "{package: \"5050\", circle: 50, count: 4, from: 100, step: 20, direction: cw, skip: [2]}").PixelCircles.Single();

        Assert.Equal([100.0, 60.0, 40.0], arc.Pixels.Select(p => Math.Round(Angle.Of(p.At).Degrees, 6)));
        Assert.Equal(18, arc.Count);
        Assert.Equal(50 * Math.Sin(10 * Math.PI / 180), arc.Pitch, 1e-6);
    }

    [Fact]
    public void An_arc_that_goes_more_than_once_round_is_refused_with_the_step_that_goes_round()
    {
        BoardReadResult read = Read(pixels: "{package: \"5050\", circle: 50, count: 10, step: 40}");
        Assert.Contains(read.Diagnostics, told => told.IsError && told.Message.Contains("more than once round", StringComparison.Ordinal)
            && told.ToString().Contains("36", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("", "-10,5 0,5 10,5 -10,-5 0,-5 10,-5")]
    [InlineData(", snake: true", "-10,5 0,5 10,5 10,-5 0,-5 -10,-5")]
    [InlineData(", first: bottom-right, along: columns, snake: true", "10,-5 10,5 0,5 0,-5 -10,-5 -10,5")]
    [InlineData(", first: top-right, skip: [2, 6]", "10,5 -10,5 10,-5 0,-5")]
    [InlineData(", turn: 90, at: [3, -2]", "-2,-12 -2,-2 -2,8 8,-12 8,-2 8,8")]
    public void A_grid_counts_its_places_from_its_first_corner(string how, string places)
    {
        CircuitBoard board = Board(pixels: $"{{package: \"2020\", grid: {{columns: 3, rows: 2, pitch: 10{how}}}}}");

        Assert.Equal(places, string.Join(' ', board.PixelCircles.SelectMany(one => one.Pixels)
            .Select(pixel => FormattableString.Invariant($"{Math.Round(pixel.At.X, 6)},{Math.Round(pixel.At.Y, 6)}"))));
        Assert.All(board.PixelCircles, one => Assert.Equal(1, one.Count));
        Assert.Equal("D1", board.PixelCircles[0].Pixels[0].Ref);
        Assert.Equal($"D{board.PixelCircles.Length}", board.PixelCircles[^1].Pixels[0].Ref);
    }

    [Fact]
    public void What_lies_in_a_grid_turns_with_it_and_holes_and_parts_take_it_too()
    {
        CircuitBoard board = Board(
            holes: "[{grid: {columns: 2, rows: 2, pitch: [30, 20]}, diameter: 2}]",
            pixels: "{package: \"2020\", grid: {columns: 2, rows: 1, pitch: 8, turn: 30}, rotation: 5, "
                + "with: {package: \"0603\", at: [3, 0]}}",
            parts: "[{ref: R1, package: \"0603\", side: bottom, grid: {columns: 1, rows: 3, pitch: 6, turn: 10}}]");

        Assert.Equal([new Point2(-15, 10), new Point2(15, 10), new Point2(-15, -10), new Point2(15, -10)], board.Holes.Select(h => h.At));
        Assert.All(board.PixelCircles, one => Assert.Equal(35, one.Pixels[0].Rotation.Degrees, Near));
        BoardPart beside = board.Parts.Single(p => p.Ref == "D1.C1");
        Assert.Equal(3, Point2.Distance(beside.At, board.PixelCircles[0].Pixels[0].At), Near);
        Assert.Equal(30, Angle.Of(beside.At - board.PixelCircles[0].Pixels[0].At).Degrees, 1e-6);
        Assert.Equal(["R1", "R2", "R3"], board.Parts.Where(p => p.Ref[0] == 'R').Select(p => p.Ref));
        Assert.All(board.Parts.Where(p => p.Ref[0] == 'R'), part => Assert.Equal(10, part.Rotation.Degrees, Near));
    }

    [Theory]
    [InlineData("{columns: 40, rows: 30, pitch: 1}", "at most 1000")]
    [InlineData("{columns: 2, rows: 2, pitch: 10, skip: [5]}", "places from 1 to 4")]
    public void A_grid_that_cannot_be_is_refused(string grid, string told) =>
        Assert.Contains(
            told, string.Join('\n', Read(pixels: $"{{package: \"2020\", grid: {grid}}}").Diagnostics), StringComparison.Ordinal);

    private static CircuitBoard Board(string holes = "[]", string pixels = "[]", string parts = "[]")
    {
        BoardReadResult read = Read(pixels, holes, parts);
        Assert.Empty(read.Diagnostics.Where(d => d.IsError).Select(d => d.ToString()));
        return read.File!.Board;
    }

    private static BoardReadResult Read(string pixels, string holes = "[]", string parts = "[]") => BoardTexts.Read(
        $"format: shellforge/1\nname: Test\nboard:\n  outline: {{disc: 70}}\n  thickness: 1.6\n  holes: {holes}\n  parts: {parts}\n"
            + $"  pixels: {pixels}\nhousing: {{insert: m2.5x4-od4.6}}\n");
}
