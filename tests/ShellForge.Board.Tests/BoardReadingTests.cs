using ShellForge.Board.Description;
using ShellForge.Board.Yaml;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Tests;

public class BoardReadingTests
{
    private const double Near = 1e-9;

    [Fact]
    public void Units_end_at_the_border()
    {
        Assert.Equal(1.6, Board("thickness: 1.6").Thickness, Near);
        Assert.Equal(1.6, Board("thickness: 1.6 mm").Thickness, Near);
        Assert.Equal(1.5748, Board("thickness: 62 mil").Thickness, Near);
        Assert.Equal(1.5748, Board("thickness: \"0.062 in\"").Thickness, Near);
        Assert.Equal(1.5748, Board("thickness: 62mil").Thickness, Near);
    }

    [Fact]
    public void The_centre_is_taken_off_coordinates_but_not_off_polar_ones()
    {
        CircuitBoard board = Board("centre: [100, -50]", holes: "[{at: [120, -50], diameter: 2}, {polar: [20, 90], diameter: 2}]");

        Assert.Equal(new Point2(20, 0), board.Holes[0].At);
        Assert.Equal(new Point2(0, 20), board.Holes[1].At);
        Assert.Equal(new Point2(100, -50), board.FileCentre);
    }

    [Fact]
    public void A_pattern_of_holes_runs_counter_clockwise_from_its_angle()
    {
        CircuitBoard board = Board(holes: "[{circle: 40, count: 4, from: 90, diameter: 2, skip: [3]}]");

        Assert.Equal([new Point2(0, 20), new Point2(-20, 0), new Point2(20, 0)], board.Holes.Select(h => h.At));
        Assert.Equal(["hole 1", "hole 2", "hole 3"], board.Holes.Select(h => h.Name));
        Assert.All(board.Holes, h => Assert.Equal("board.holes[0]", h.Path));
    }

    [Fact]
    public void LEDs_turn_with_their_circle_and_carry_their_companion()
    {
        CircuitBoard board =
            Board(pixels: "{package: \"5050\", circle: 40, count: 4, from: 90, direction: cw, rotation: 5, with: {package: \"0603\", at: "
                + "[-4.4, 1]}}");

        PixelCircle circle = board.PixelCircles.Single();
        Assert.Equal([new Point2(0, 20), new Point2(20, 0), new Point2(0, -20), new Point2(-20, 0)], circle.Pixels.Select(p => p.At));
        Assert.Equal(["D1", "D2", "D3", "D4"], circle.Pixels.Select(p => p.Ref));
        Assert.Equal(95, circle.Pixels[0].Rotation.Degrees, Near);
        Assert.Equal(28.284271247, circle.Pitch, 1e-6);

        // x away from the centre, y counter-clockwise: at the top LED that is up and to the left.
        BoardPart first = board.Parts.Single(p => p.Ref == "D1.C1");
        Assert.Equal(-1, first.At.X, Near);
        Assert.Equal(15.6, first.At.Y, Near);
        Assert.Equal(BoardSide.Top, first.Side);
        Assert.True(first.Passive);
    }

    [Fact]
    public void LEDs_that_stay_keep_the_boards_axes()
    {
        CircuitBoard board =
            Board(pixels: "{package: \"5050\", circle: 40, count: 4, from: 90, turns: false, with: {package: \"0603\", at: [0, -4]}}");

        Assert.All(board.PixelCircles[0].Pixels, p => Assert.Equal(Angle.Zero, p.Rotation));
        Assert.Equal(new Point2(0, 16), board.Parts[0].At);
        Assert.Equal(-20, board.Parts[1].At.X, Near);
    }

    [Fact]
    public void Circles_count_their_LEDs_on_and_keep_clear_of_diodes()
    {
        const string Two = "[{package: \"5050\", circle: 50, count: 6}, {package: \"5050\", circle: 30, count: 3, skip: [1]}]";
        Assert.Equal("D8", Board(pixels: Two).PixelCircles[1].Pixels[^1].Ref);
        Assert.Equal("LED8", Board(pixels: Two, parts: "[{ref: D5, size: [2, 1, 1], at: [0, 0]}]").PixelCircles[1].Pixels[^1].Ref);
    }

    [Fact]
    public void A_single_LED_is_a_circle_of_one()
    {
        PixelCircle circle = Board(pixels: "{package: \"5050\", at: [0, 0]}").PixelCircles.Single();

        Assert.Equal((1, 0.0), (circle.Count, circle.Diameter));
        Assert.Equal(10, circle.Pitch, Near);
    }

    [Fact]
    public void A_connector_is_placed_by_its_face_and_its_distance_past_the_edge()
    {
        BoardPart part = Board(parts: "[{ref: J1, package: usb-c-receptacle, faces: 270, past-edge: 1.0}]").Parts.Single();

        Assert.Equal(0, part.Mouth!.Face.X, Near);
        Assert.Equal(-36, part.Mouth.Face.Y, Near);
        Assert.Equal(-36 + (7.35 / 2), part.At.Y, Near);
        Assert.Equal(270, part.Rotation.Degrees);
        Assert.Equal(1.0, part.Mouth.PastEdge, Near);
        Assert.Equal(BoardSide.Bottom, part.Side);
    }

    [Fact]
    public void Past_the_edge_is_measured_in_front_of_a_connector_that_stands_aside()
    {
        BoardPart part = Board(parts: "[{ref: J1, package: usb-c-receptacle, at: [10, -20], faces: 270, past-edge: 0.5}]").Parts.Single();

        Assert.Equal(10, part.At.X, Near);
        Assert.Equal(-Math.Sqrt((35 * 35) - 100) - 0.5, part.Mouth!.Face.Y, Near);
    }

    [Fact]
    public void Without_it_the_distance_past_the_edge_is_worked_out()
    {
        BoardPart part = Board(parts: "[{ref: J1, package: usb-c-receptacle, at: [30, 0], rotation: 0}]").Parts.Single();
        Assert.Equal(30 + (7.35 / 2) - 35, part.Mouth!.PastEdge, Near);
    }

    [Fact]
    public void A_connector_overhangs_its_module()
    {
        BoardPart part =
            Board(parts: "[{ref: U1, package: controller-module-18x21, at: [0, 0], faces: 180, mounted: flat}]").Parts.Single();
        Assert.Equal(-(21.0 / 2) - 1.25, part.Mouth!.Face.X, Near);
    }

    [Theory]
    [InlineData("{ref: U1, package: controller-module-18x21, at: [0, 0], mounted: flat}", 4.6)]
    [InlineData("{ref: U1, package: controller-module-18x21, at: [0, 0], mounted: on-pins, lift: 1}", 9.5)]
    [InlineData("{ref: U1, package: controller-module-18x21, at: [0, 0], height: 5.1}", 5.1)]
    [InlineData("{ref: U1, package: controller-module-18x21, at: [0, 0]}", null)]
    [InlineData("{ref: J1, package: usb-c-receptacle, at: [30, 0], mounted: mid-board}", 1.6)]
    [InlineData("{ref: J1, package: usb-c-receptacle, at: [30, 0], mounted: on-pins}", null)]
    [InlineData("{ref: C1, package: electrolytic-6.3x11, at: [0, 0], mounted: standing}", 11.0)]
    [InlineData("{ref: C1, package: electrolytic-6.3x11, at: [0, 0], mounted: lying}", 6.3)]
    [InlineData("{ref: C1, package: electrolytic-6.3x11, at: [0, 0], height: unknown}", null)]
    [InlineData("{ref: X1, size: [3, 4, 5], at: [0, 0], lift: 0.5}", 5.5)]
    [InlineData("{ref: X1, size: [3, 4], at: [0, 0]}", null)]
    public void The_height_follows_from_how_a_part_sits(string part, double? height)
    {
        BoardReadResult read = Read(parts: $"[{part}]");

        Assert.Equal(height, read.File!.Board.Parts.Single().Height);
        Assert.Equal(height is null && !part.Contains("unknown", StringComparison.Ordinal)
            && part.Contains("package", StringComparison.Ordinal), read.Diagnostics.Any(d => d.Code == "height-unknown"));
    }

    [Fact]
    public void A_part_laid_on_its_side_is_as_long_as_it_was_high()
    {
        BoardPart part = Board(parts: "[{ref: C1, package: electrolytic-6.3x11, at: [0, 0], mounted: lying}]").Parts.Single();
        Assert.Equal((11.0, 6.3, false), (part.Length, part.Width, part.Round));
    }

    [Fact]
    public void Parts_on_a_circle_count_on_and_turn()
    {
        CircuitBoard board = Board(parts: "[{ref: R10, package: \"0603\", circle: 40, count: 4, from: 0}]");
        Assert.Equal(["R10", "R11", "R12", "R13"], board.Parts.Select(p => p.Ref));
        Assert.Equal([0.0, 90, 180, 270], board.Parts.Select(p => p.Rotation.Degrees));
    }

    [Fact]
    public void Measured_sizes_override_nominal_ones()
    {
        CircuitBoard board = Board("measured: {outer: 69.4, thickness: 1.52, tab-stub: 0.35, batch: May}");
        Assert.Equal((69.4, 1.52, 0.35), (((DiscOutline)board.Outline).Diameter, board.Thickness, board.TabStub!.Value));
    }

    [Fact]
    public void Arcs_make_a_true_circle_within_the_chord_error()
    {
        CircuitBoard board = Board(outline: "{arcs: [[-30, 0], [30, 0, 180], [-30, 0, 180]]}");
        Assert.InRange(board.Outline.Region.Area, (Math.PI * 900) - 2.0, Math.PI * 900);
        Assert.Equal(30, board.Outline.OuterRadius, 4);
    }

    [Fact]
    public void A_polygon_is_centred_on_its_box_unless_said_otherwise()
    {
        CircuitBoard boxed = Board(outline: "{polygon: [[0, 0], [60, 0], [60, 50], [0, 50]]}",
            pixels: "{package: \"2020\", circle: 20, count: 4}");
        Assert.Equal(new Point2(30, 25), boxed.FileCentre);
        Assert.Equal(3000, boxed.Outline.Region.Area, 1e-3);

        CircuitBoard said = Board("centre: [25, 25]", outline: "{polygon: [[0, 0], [0, 50], [60, 50], [60, 0], [0, 0]]}",
            pixels: "{package: \"2020\", circle: 20, count: 4}");
        Assert.Equal(35, said.Outline.Region.Bounds.Max.X, 1e-4);
    }

    [Fact]
    public void Cutouts_and_notches_are_taken_off_a_disc_that_stays_a_disc()
    {
        CircuitBoard board = Board("cutouts: [{circle: 4, at: [35, 0]}, {circle: 6}]");
        Assert.IsType<DiscOutline>(board.Outline);
        Assert.False(board.Outline.Region.Contains(Point2.Origin));
        Assert.False(board.Outline.Region.Contains(new Point2(34, 0)));
        Assert.True(board.Outline.Region.Contains(new Point2(0, 34)));
    }

    [Theory]
    [InlineData("cutouts: [{polygon: [[-1, -40], [1, -40], [1, 40], [-1, 40]]}]", "cutouts-split-board")]
    [InlineData("cutouts: [{circle: 90}]", "cutouts-split-board")]
    [InlineData("cutouts: [{circle: 350, at: [100, 100]}]", "cutout-off-board")]
    [InlineData("measured: {bore: 20}", "measured-without-bore")]
    [InlineData("measured: {outer: 50}", "measured-far-off")]
    [InlineData("measured: {thickness: 0.8}", "measured-far-off")]
    [InlineData("measured: {date: yesterday}", "not-a-date")]
    [InlineData("measured: {led-height: 3}", "measured-far-off")]
    [InlineData("centre: [70, 0]", "part-off-board")]
    public void Faults_of_the_outline_are_told(string line, string code) =>
        Assert.Contains(Read(line, parts: "[{ref: R1, package: \"0603\", at: [0, 20]}]").Diagnostics, d => d.Code == code && d.IsError);

    [Theory]
    [InlineData("{polygon: [[0, 0], [60, 0], [60, 60], [0, 60], [0, 30], [20, 30], [0, 30]]}")]
    [InlineData("{polygon: [[0, 0], [60, 0], [30, 0], [60, 60], [0, 60]]}")]
    [InlineData("{polygon: [[0, 0], [60, 0], [60, 60], [30, 0], [0, 60]]}")]
    [InlineData("{polygon: [[0, 0], [60, 60], [60, 0], [0, 60]]}")]
    public void An_outline_that_touches_itself_is_refused(string outline) =>
        Assert.Contains(Read(outline: outline).Diagnostics, d => d.Code == "outline-crosses-itself");

    [Theory]
    [InlineData("{polygon: [[0, 0], [60, 60], [0.3, 0.1]]}")]
    [InlineData("{polygon: [[0, 0], [60, 0], [60, 1.9], [0, 1.9]]}")]
    [InlineData("{polygon: [[0, 0], [0.001, 0], [0.001, 0.001]]}")]
    public void An_outline_that_is_nowhere_as_wide_as_a_board_is_refused(string outline) =>
        Assert.Contains(Read(outline: outline).Diagnostics, d => d.Code == "outline-too-narrow");

    // Strips 2.03 wide round an open middle: places looked for across their rectangle lie beside them all.
    [Fact]
    public void A_board_of_long_strips_has_its_middle_on_one_of_them()
    {
        BoardReadResult read = Read(
            outline: "{polygon: [[-100, -60], [100, -60], [100, 60], [97.97, 60], [97.97, -57.97], [-97.97, -57.97], "
                + "[-97.97, 60], [-100, 60]]}",
            pixels: "{package: \"2020\", at: [0, -59]}");
        Assert.Empty(read.Diagnostics.Where(d => d.IsError));
        CircuitBoard board = read.File!.Board;
        Assert.True(board.Outline.Region.Contains(Point2.Origin));
        Assert.True(board.Outline.Region.DistanceToOutline(Point2.Origin) > 0.9);
    }

    [Fact]
    public void Wires_take_their_thickness_from_their_gauge()
    {
        CircuitBoard board = Board("wires: [{name: a, at: [5, 5], gauge: 22, to: b}, {name: b, polar: [20, 0], diameter: 1.1}]");
        Assert.Equal([1.7, 1.1], board.Wires.Select(w => w.Diameter));
        Assert.Equal(["b", "out"], board.Wires.Select(w => w.To));
    }

    [Fact]
    public void A_hole_with_an_insert_of_its_own_gets_that_threads_screw()
    {
        CircuitBoard board = Board(holes: "[{at: [25, 0], diameter: 3.2, insert: m3x4-od4.6}, {at: [-25, 0], diameter: 2.7}]");
        Assert.Equal(("m3-pan", null), (board.Holes[0].Screw!.Name, board.Holes[1].Screw?.Name));
    }

    [Fact]
    public void Places_point_back_into_the_file()
    {
        BoardFile file = Read(parts: "[{ref: R1, package: \"0603\", at: [0, 20]}]").File!;
        FilePlace place = file.Places["board.parts[R1].at"];
        Assert.Equal(place, file.Places["board.parts[0].at"]);
        Assert.Equal("board.yaml", place.File);
        Assert.Equal(7, place.Line);
        Assert.Equal("board.parts[R1]", file.Board.Parts[0].Path);
    }

    [Fact]
    public void What_is_not_said_has_its_default()
    {
        BoardFile file = Read().File!;
        Assert.Equal(("m2.5-pan", "fdm-0.4", "petg-black", "petg-white"),
            (file.Housing.Screw!.Name, file.Print.Printer.Name, file.Print.Shell.Name, file.Print.Diffuser.Name));
        Assert.Equal(("usb-default", 0.5, 0.2, 1.0), (file.Power.Supply, file.Power.Amps, file.Power.Brightness, file.Power.Duty));
        Assert.Equal((90.0, UseOrientation.Wall, 30.0), (file.Up.Degrees, file.Use.Orientation, file.Use.WarmestCelsius));
        Assert.Empty(file.Housing.Cables);
        Assert.Equal("cable-not-said", Assert.Single(Read().Diagnostics).Code);
        Assert.Equal("J1",
            Assert.IsType<ConnectorCable>(Assert.Single(
                Read(parts: "[{ref: J1, package: usb-c-receptacle, faces: 0, past-edge: 0}]").File!.Housing.Cables)).PartRef);
    }

    [Theory]
    [InlineData("25", 25, 25)]
    [InlineData("[-10, 35]", -10, 35)]
    public void The_surrounding_air_is_a_number_or_a_range(string said, double coolest, double warmest)
    {
        UseSpec use = Used(said).File!.Use;
        Assert.Equal((coolest, warmest, "still-air"), (use.CoolestCelsius, use.WarmestCelsius, use.Air.Name));
    }

    [Theory]
    [InlineData("[35, 10]", "range-backwards")]
    [InlineData("[10, 300]", "out-of-range")]
    [InlineData("[10]", "wrong-kind")]
    [InlineData("10..35", "wrong-kind")]
    public void A_range_of_air_that_makes_no_sense_is_told(string said, string code) =>
        Assert.Equal(code, Assert.Single(Used(said).Diagnostics, d => d.IsError).Code);

    private static BoardReadResult Used(string ambient) => BoardTexts.Read(
        $"format: shellforge/1\nname: Test\nboard:\n  outline: {{disc: 70}}\n  thickness: 1.6\n  pixels: {{package: \"2020\", circle: 44, "
            + $"count: 8}}\nhousing: {{insert: m2.5x4-od4.6}}\nuse: {{ambient: {ambient}}}\n");

    private static CircuitBoard Board(
        string line = "edge: clean", string outline = "{disc: 70}", string holes = "[]",
        string pixels = "{package: \"2020\", circle: 44, count: 8}", string parts = "[]")
    {
        BoardReadResult read = Read(line, outline, holes, pixels, parts);
        Assert.Empty(read.Diagnostics.Where(d => d.IsError).Select(d => d.ToString()));
        return read.File!.Board;
    }

    private static BoardReadResult Read(
        string line = "edge: clean", string outline = "{disc: 70}", string holes = "[]",
        string pixels = "{package: \"2020\", circle: 44, count: 8}", string parts = "[]")
    {
        string thickness = line.StartsWith("thickness", StringComparison.Ordinal) ? "" : "  thickness: 1.6\n";
        return BoardTexts.Read(
            $"format: shellforge/1\nname: Test\nboard:\n  {line}\n  outline: {outline}\n  holes: {holes}\n  parts: {parts}\n  pixels: "
                + $"{pixels}\n{thickness}housing: {{insert: m2.5x4-od4.6}}\n");
    }

    [Fact]
    public void A_board_without_mounting_holes_that_snaps_shut_asks_for_no_insert()
    {
        string text = File.ReadAllText(BoardTexts.Folder("tests", "boards", "broken", "holes-without-insert.yaml"));
        BoardReadResult read =
            BoardTexts.Read(
                string.Join('\n',
                    text.Split('\n').Where(line => !line.Contains("circle: 54", StringComparison.Ordinal) && line != "  holes:")));
        Assert.DoesNotContain(read.Diagnostics, d => d.IsError);
        Assert.Null(read.File!.Housing.Insert);
        Assert.Null(read.File.Housing.Screw);
    }
}
