using ShellForge.Geometry.Planar;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Planning.Tests;

public sealed class FineWallsTests
{
    // These cases are of diffusers that are printed in.
    private const string Print = "{printer: fdm-0.4-multi-filament, shell: petg-black, diffuser: petg-white}";

    private static readonly Dictionary<string, WrittenBoard> Boards = new()
    {
        // Heads, posts and LEDs bite into the rim from either side and leave 0.1 to 0.25 of it.
        ["posts at the rim"] = Board("{disc: 60}", "{circle: 48.4, count: 7, from: 90, diameter: 4.2}",
            "{package: \"5050\", circle: 27, count: 10, from: 90, direction: cw}", "m4x4-od6.0", "screws", "blend",
            "{thickness: 0.6, distance: auto}"),
        ["heads in the rim"] = Board("{disc: 20}", "{circle: 10.4, count: 2, from: 0, diameter: 3.2}",
            "{package: \"2020\", circle: 9, count: 5, from: 90, direction: cw}", "m3x4-od4.2", "snap", "pixels",
            "{thickness: 1.2, distance: auto}"),
        ["heads beside the rim"] = Board("{disc: 40}", "{circle: 32.4, count: 7, from: 90, diameter: 2.2}",
            "{package: \"3535\", circle: 18, count: 7, from: 90, direction: cw}", "m2x4-od3.6", "snap", "pixels",
            "{thickness: 0.8, distance: auto}"),
        ["heads in the seat"] = Board("{disc: 60}", "{circle: 48.4, count: 8, from: 90, diameter: 4.2}",
            "{package: \"5050\", circle: 27, count: 10, from: 90, direction: cw}", "m4x6-od6.0", "snap", "blend",
            "{thickness: 0.6, distance: auto}"),
        // The slot for the baffle's tooth leaves a film of the seat before it.
        ["a tooth's slot, wide lines"] =
            Board("{ring: {outer: 92, bore: 46}}", "{circle: 84, count: 4, from: 45, diameter: 2.7}",
                "{package: \"5050\", circle: 68, count: 24, from: 90, direction: cw}", "m2.5x4-od4.6", "screws", "blend",
                "{thickness: 0.8, distance: auto}") with
            { Print = "{printer: fdm-0.6, shell: petg-black, diffuser: pla-white}" },
    };

    public static TheoryData<string> Names => [.. Boards.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void No_section_of_baffle_lip_and_seat_has_anything_finer_than_a_line(string name)
    {
        HousingPlan plan = HousingPlanner.Plan(Boards[name].Read());
        BafflePlan baffle = plan.Baffle!;
        double line = plan.Source.Print.Printer.LineWidth;
        foreach (double level in baffle.Notches.Select(notch => Math.Min(notch.Top, baffle.Top)).Append(baffle.Top).Distinct())
        {
            Region section =
                baffle.Walls.Less(Region.Union(baffle.Notches.Where(notch => notch.IsAt(level - 0.05)).Select(notch => notch.Outline)));
            Assert.Empty(Finer(section, line));
        }

        Assert.Empty(Finer(plan.Cover.Lip, line));
        Assert.Empty(Finer(plan.Cover.Seat, line));
    }

    // A capacitor beside every LED bites into a wall of every cell: what it leaves once got one line more, which is neither one nor two.
    [Fact]
    public void What_notches_leave_of_the_walls_of_cells_is_two_lines_thick()
    {
        HousingPlan plan = HousingPlanner.Plan(WrittenBoard.Sample("tide-lamp"));
        BafflePlan baffle = plan.Baffle!;
        double[] levels = [.. baffle.Notches.Select(notch => notch.Top).Where(top => top < baffle.Top).Distinct()];
        Assert.NotEmpty(levels);
        Assert.All(levels, level => Assert.Empty(Finer(
            baffle.Walls.Less(Region.Union(baffle.Notches.Where(notch => notch.IsAt(level - 0.05)).Select(notch => notch.Outline))),
            0.95 * baffle.Wall)));
    }

    [Theory]
    [InlineData("fdm-0.4", 0.4)]
    [InlineData("fdm-0.4-fine", 0.48)]
    [InlineData("fdm-0.4-draft", 0.56)]
    [InlineData("fdm-0.6", 0.6)]
    public void The_lap_of_a_printed_in_diffuser_and_the_bezel_over_it_are_two_layers_at_least(string printer, double lap)
    {
        HousingPlan plan = HousingPlanner.Plan((Boards["heads beside the rim"] with
        {
            Print = $"{{printer: {printer}, shell: petg-black, diffuser: petg-white}}",
            Diffuser = "{fit: printed-in, thickness: 0.8}",
        }).Read());
        Assert.Equal(lap, plan.Diffuser.Lap!.Thickness, 6);
        Assert.True(plan.Cover.BezelThickness - plan.Diffuser.Thickness - lap >= (2 * plan.Source.Print.Printer.LayerHeight) - 1e-6);
    }

    [Fact]
    public void A_rim_that_a_head_leaves_too_fine_is_thickened_inward_and_stays_clear_of_the_head()
    {
        HousingPlan plan = HousingPlanner.Plan(Boards["heads beside the rim"].Read());
        BafflePlan baffle = plan.Baffle!;
        Assert.Contains(plan.Decisions, decision => decision.Path == "baffle.fine-walls" && decision.Value == "thickened");
        Assert.True(baffle.Surrounded.Contains(baffle.Walls));
        Assert.Contains(baffle.Notches, notch => !notch.IsSlope && plan.Screws.Any(screw => screw.Name == notch.For));
        Assert.All(plan.Screws, screw => Assert.All(
            baffle.Notches.Where(notch => notch.For == screw.Name && !notch.IsSlope),
            notch => Assert.True(notch.Outline.Contains(Region.Disc(screw.At, Ring.Hole((screw.Screw.HeadDiameter / 2) + 0.45))))));
    }

    [Fact]
    public void The_seat_goes_round_a_rim_that_is_open()
    {
        HousingPlan plan = HousingPlanner.Plan(Boards["heads in the rim"].Read());
        Assert.True(plan.Baffle!.Walls.Filled().Area < 0.9 * plan.Baffle.Surrounded.Area);
        Assert.False(plan.Cover.Seat.IsEmpty);
        Assert.True(plan.Cover.Seat.Intersect(plan.Baffle.Surrounded).IsEmpty);
    }

    // What a line can't draw, longer than what it rounds off corners.
    private static IEnumerable<Region> Finer(Region region, double line) => region.Parts.SelectMany(part =>
    {
        Region core = part.Offset(-(line / 2) + 0.008);
        return (core.IsEmpty ? part : part.Less(core.Offset((line / 2) + 0.02))).Parts.Where(piece => piece.Perimeter > 4 * line);
    });

    private static WrittenBoard Board(string outline, string holes, string pixels, string insert, string closure, string look,
        string diffuser) => new()
        {
            Outline = outline,
            Holes = [holes],
            Pixels = pixels,
            Insert = insert,
            Closure = closure,
            Light = $"{{through: front, look: {look}}}",
            Diffuser = diffuser,
            Print = Print,
        };
}
