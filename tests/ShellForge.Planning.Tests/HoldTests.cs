using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Planning.Tests;

/// <summary>What keeps a board where it lies: carried round its centre of mass, kept down, kept from turning.</summary>
public sealed class HoldTests
{
    // A disc whose LEDs leave the rim free and whose cover turns shut over the board: nothing presses it.
    private static readonly WrittenBoard Twisted = new()
    {
        Holes = [],
        Closure = "twist",
        Housing = ["baffle: loose"],
        Walls = 5,
    };

    // Each outline with no hole, one at a place, one at another and both.
    public static TheoryData<string, string> Carried
    {
        get
        {
            (string Outline, string One, string Other)[] boards =
            [
                ("{disc: 44}", "0, 15", "12, 4"), ("{disc: 80}", "0, 33", "25, 6"), ("{disc: 150}", "30, 0", "-60, 5"),
                ("{ring: {outer: 68, bore: 30}}", "0, 24", "-20, -14"), ("{ring: {outer: 220, bore: 150}}", "0, 92", "90, 0"),
                ("{polygon: [[-50, -12], [50, -12], [50, 12], [-50, 12]]}", "-42, 0", "42, 5"),
                ("{polygon: [[-30, -20], [30, -20], [0, 40]]}", "0, 5", "16, -13"),
                ("{arcs: [[-30, 0], [30, 0, 180], [-30, 0]]}", "0, -8", "-15, -12"),
            ];
            var data = new TheoryData<string, string>();
            foreach ((string outline, string one, string other) in boards)
            {
                string[] holes = ["", one, other, $"{one}|{other}"];
                Array.ForEach(holes, hole => data.Add(outline, hole));
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Carried))]
    public void A_board_with_few_holes_or_none_is_carried_all_round_its_centre_of_mass(string outline, string holes)
    {
        BoardFile file = new WrittenBoard
        {
            Outline = outline,
            Holes = [.. holes.Split('|', StringSplitOptions.RemoveEmptyEntries).Select(at => $"{{at: [{at}], diameter: 2.7}}")],
            Pixels = "[]",
        }.Read();
        Region board = file.Board.Outline.Region;
        HousingPlan plan = HousingPlanner.Plan(file);
        Assert.DoesNotContain(plan.Refusals, refusal => refusal.Rule == "board-not-carried");
        Point2[] carried =
        [
            .. plan.Bosses.Where(boss => boss.Use != BossUse.Closure)
                .SelectMany(boss => Region.Disc(boss.At, Ring.Peg(boss.Diameter / 2)).Intersect(board).Loops.SelectMany(loop => loop)),
        ];

        // Weighed on a grid of crumbs; in every direction something carries farther out than the middle lies.
        Point2 middle = Weighed(board);
        double least = Enumerable.Range(0, 360).Select(degrees => Point2.Polar(1, Angle.FromDegrees(degrees)))
            .Min(direction => carried.Max(point => Point2.Dot(point - middle, direction)));
        double room = Enumerable.Range(0, 360).Select(degrees => Point2.Polar(1, Angle.FromDegrees(degrees)))
            .Min(direction => board.Loops.SelectMany(loop => loop).Max(point => Point2.Dot(point - middle, direction)));
        Assert.True(least > 0.3 * room, $"carried {least:0.0} mm out of {room:0.0}: "
            + string.Join(" ", plan.Bosses.Select(boss => $"{boss.Use} {boss.At.X:0.0},{boss.At.Y:0.0}")));
        Decision told = Assert.Single(plan.Decisions, decision => decision.Path == "hold.carried");
        Assert.Contains("does not tip", told.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void Three_rests_stand_a_third_of_a_turn_apart_and_not_on_one_side()
    {
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard { Holes = [] }.Read());
        double[] at = [.. plan.Bosses.Select(rest => Angle.Of(rest.At).Normalized.Degrees).Order()];
        Assert.Equal(3, at.Length);
        Assert.True(at.Zip([.. at.Skip(1), at[0] + 360]).Max(pair => pair.Second - pair.First) < 140, string.Join(", ", at));
    }

    [Fact]
    public void Parts_all_along_half_of_the_rim_let_the_board_tip_and_that_is_told()
    {
        string[] parts = ["{ref: C1, size: [7, 7, 3], side: bottom, circle: 71, count: 13, from: -10, step: 15}"];
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard { Holes = [], Parts = parts }.Read());
        PlanRefusal told = Assert.Single(plan.Refusals, refusal => refusal.Rule == "board-not-carried");
        Assert.Contains("tips", told.Message, StringComparison.Ordinal);
        Assert.InRange(told.Measured, 0.5, 25);
    }

    [Fact]
    public void A_connector_gets_a_rest_on_either_side_where_there_is_room()
    {
        BoardFile file = new WrittenBoard
        {
            Holes = [],
            Cable = "{part: J1}",
            Parts = ["{ref: J1, package: usb-c-receptacle, side: bottom, faces: 270, past-edge: 0.5}"],
        }.Read();
        HousingPlan plan = HousingPlanner.Plan(file);
        double[] beside = [.. plan.Bosses.Select(rest => Angle.Between(Angle.Of(rest.At), Angle.FromDegrees(270)).Degrees).Order()];
        Assert.True(beside[1] < 60, string.Join(", ", beside));
        Decision told = Assert.Single(plan.Decisions, decision => decision.Path == "hold.carried");
        Assert.Contains("J1 lies", told.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void A_board_with_holes_is_kept_by_its_screws()
    {
        BoardHoldPlan hold = HousingPlanner.Plan(new WrittenBoard().Read()).Hold;
        Assert.Equal(("by its 4 screws", 0.0, "its screws"), (hold.DownBy, hold.Rise, hold.TurnStoppedBy));
        Assert.Empty(hold.Stops);
    }

    [Fact]
    public void The_baffle_that_the_cover_presses_keeps_a_board_down_and_its_cells_keep_it_from_turning()
    {
        HousingPlan plan = HousingPlanner.Plan(
            new WrittenBoard { Holes = [], Light = "{through: front, look: pixels}", Diffuser = "{thickness: 0.8, distance: 8}" }.Read());
        Assert.NotNull(plan.Baffle!.Tooth);
        Assert.Equal(("by the baffle", "its LEDs in their cells"), (plan.Hold.DownBy, plan.Hold.TurnStoppedBy));
        Assert.InRange(plan.Hold.Turn.Degrees, 1, 12);
        Assert.DoesNotContain(plan.Refusals, refusal => refusal.Rule is "board-turns" or "board-not-kept-down");
    }

    [Theory]
    [InlineData("{disc: 80}", 1.6)]
    [InlineData("{disc: 44}", 1.0)]
    [InlineData("{ring: {outer: 100, bore: 60}}", 1.6)]
    public void Nothing_of_the_cover_touches_a_board_of_the_greatest_thickness_that_it_keeps_down(string outline, double thickness)
    {
        BoardFile file = (Twisted with { Outline = outline, Thickness = thickness, Pixels = Light(outline) }).Read();
        HousingPlan plan = HousingPlanner.Plan(file);
        Assert.NotNull(plan.Hold.DownBy);
        Assert.InRange(plan.Hold.Rise, (0.1 * thickness) + 0.05, 0.6);
    }

    [Fact]
    public void Posts_under_the_cover_stand_round_the_centre_and_clear_of_all_that_is_on_the_board_while_it_turns()
    {
        // A connector on the LEDs' side lifts the parting line, and the lip with it.
        BoardFile file = (Twisted with
        {
            Cable = "{part: J1}",
            Parts = ["{ref: J1, package: usb-c-receptacle, side: top, faces: 270, past-edge: 0}"],
        }).Read();
        HousingPlan plan = HousingPlanner.Plan(file);
        Assert.True(plan.Hold.Stops.Length >= 3, plan.Hold.DownBy);
        Assert.Equal(plan.Stack.BoardTop + plan.Hold.Rise, plan.Hold.StopBottom, 6);
        Angle turn = ((TwistClosurePlan)plan.Closure).Turn;
        Region[] bodies = [.. PartEnvelope.OnTop(file.Board).Select(part => part.Outline)];
        foreach (BoardStopPlan stop in plan.Hold.Stops)
        {
            Assert.True(stop.Outline.Intersect(file.Board.Outline.Region).Area > 1);
            Assert.True(stop.Outline.Intersect(plan.Shell.Walls).IsEmpty);
            for (int i = 0; i <= 20; i++)
            {
                Region there = stop.Outline.Turned(i / 20.0 * turn);
                Assert.True(bodies.Min(body => body.Distance(there)) > 0.4);
            }
        }

        Point2 middle = Point2.Origin;
        double least = Enumerable.Range(0, 360).Select(degrees => Point2.Polar(1, Angle.FromDegrees(degrees)))
            .Min(direction => plan.Hold.Stops.Max(stop => Point2.Dot(stop.Over - middle, direction)));
        Assert.True(least > 8, $"{least}");
    }

    [Fact]
    public void A_round_board_that_nothing_keeps_from_turning_is_told_and_one_with_its_connector_in_the_wall_is_not()
    {
        HousingPlan free = HousingPlanner.Plan(Twisted.Read());
        PlanRefusal told = Assert.Single(free.Refusals, refusal => refusal.Rule == "board-turns");
        Assert.True(told.IsReplaced);
        Assert.Null(free.Hold.TurnStoppedBy);

        HousingPlan kept = HousingPlanner.Plan((Twisted with
        {
            Closure = "snap",
            Cable = "{part: J1}",
            Parts = ["{ref: J1, package: usb-c-receptacle, side: bottom, faces: 270, past-edge: 1.2}"],
        }).Read());
        Assert.Equal("J1 in its opening", kept.Hold.TurnStoppedBy);
        Assert.InRange(kept.Hold.Turn.Degrees, 1, 5);
    }

    private static string Light(string outline) => outline.Contains("44", StringComparison.Ordinal)
        ? "{package: \"2020\", circle: 20, count: 8, from: 90}"
        : outline.Contains("68", StringComparison.Ordinal) ? "{package: \"2020\", circle: 57, count: 12, from: 90}"
        : outline.Contains("100", StringComparison.Ordinal) ? "{package: \"2020\", circle: 80, count: 20, from: 90}"
        : "{package: \"2020\", circle: 46, count: 16, from: 90}";

    private static Point2 Weighed(Region board)
    {
        const double crumb = 0.7;
        (double x, double y, int count) = (0, 0, 0);
        for (double v = board.Bounds.Min.Y; v < board.Bounds.Max.Y; v += crumb)
        {
            for (double u = board.Bounds.Min.X; u < board.Bounds.Max.X; u += crumb)
            {
                if (board.Contains(new Point2(u, v)))
                {
                    (x, y, count) = (x + u, y + v, count + 1);
                }
            }
        }

        return new Point2(x / count, y / count);
    }
}
