using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Hands;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Planning.Tests;

public sealed class ExitTests
{
    public static TheoryData<ExitKind> Kinds => [.. Enum.GetValues<ExitKind>()];

    private static HousingPlan Plan(string cable, params string[] wires) =>
        HousingPlanner.Plan(new WrittenBoard { Cable = cable, Wires = wires }.Read());

    private static FloorExitPlan Floor(string more) =>
        Assert.IsType<FloorExitPlan>(Plan($"{{round: 4, angle: 270, through: floor{more}}}").CableExit);

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_exit_tells_the_hands_what_to_do_and_takes_room_on_the_floor(ExitKind kind)
    {
        HousingPlan plan = Plan($"{{round: 4, angle: 270, relief: tie, through: {kind.ToString().ToLowerInvariant()}}}");
        CableExitPlan exit = Assert.IsAssignableFrom<CableExitPlan>(plan.CableExit);
        HandStep step = Assert.Single(exit.HandSteps(plan));
        Assert.True(step.Text.Length > 20 && step.Check.Length > 10);
        Assert.Contains(exit.Shopping, item => item.Item.Contains("tie", StringComparison.Ordinal));
        Assert.NotEmpty(exit.Notes(plan.Shell));
        Assert.NotEmpty(exit.NameOf(0));
        Assert.True(exit.TakenInside(plan.Shell, 0.5).Area > exit.TakenInside(plan.Shell, 0).Area);
        Assert.Equal(exit.Tongue is not null, exit.AtRim is { OpensRim: true });
    }

    [Fact]
    public void Knot_or_tie_is_wider_than_the_hole_in_the_floor_and_has_room_under_the_board()
    {
        foreach (string relief in new[] { "knot", "tie" })
        {
            HousingPlan plan = Plan($"{{round: 5, angle: 200, through: floor, relief: {relief}}}",
                "{name: feed, at: [0, 10], conductors: 2, gauge: 24, to: out}");
            FloorExitPlan exit = Assert.IsType<FloorExitPlan>(plan.CableExit);
            Assert.True(exit.StopDiameter > exit.HoleDiameter + 2);
            Assert.True(exit.StopTop <= plan.Stack.BoardBottom);
            Assert.True(plan.Shell.Cavity.Contains(exit.TakenInside(plan.Shell, 0)));
            Assert.All(plan.Bosses, boss => Assert.True(exit.TakenInside(plan.Shell, 0).Distance(boss.At) > boss.Diameter / 2));

            // The leads bend as wide as they want to over it.
            WireLead lead = Assert.Single(plan.Source.Board.Wires);
            double bend = exit.Bend(new Point3(lead.At.X, lead.At.Y, plan.Stack.BoardBottom)).Radius;
            Assert.True(bend >= 4 * lead.Diameter, $"{relief}: {bend}");
        }
    }

    [Fact]
    public void A_plug_that_the_hole_does_not_pass_gets_a_window_that_it_passes()
    {
        Assert.Null(Floor("").Window);
        Assert.Null(Floor(", plug: [2.5, 2]").Window);
        FloorExitPlan exit = Floor(", plug: [12, 5]");
        PlugWindow window = Assert.IsType<PlugWindow>(exit.Window);
        Region plug = Region.Rectangle(new Point2(-2.5, -6), new Point2(2.5, 6)).Turned(exit.At).Moved(window.Middle);
        Assert.True(window.Outline(exit.At).Contains(plug));

        // Knot or tie over the hole does not lie on it, and the cable slides from one to the other.
        Assert.True(Region.Disc(exit.Place, Ring.Peg(exit.StopDiameter / 2)).Intersect(window.Outline(exit.At)).Area < 0.1);
        Assert.Single(exit.Opening.Parts);
    }

    [Fact]
    public void A_cover_may_turn_over_a_cable_that_leaves_through_the_floor()
    {
        HousingPlan Twist(string through) => HousingPlanner.Plan(new WrittenBoard
        {
            Walls = 5,
            Closure = "twist",
            Cable = $"{{round: 4, angle: 270, through: {through}}}",
        }.Read());
        Assert.IsType<TwistClosurePlan>(Twist("floor").Closure);
        Assert.IsNotType<TwistClosurePlan>(Twist("wall").Closure);
    }

    [Fact]
    public void Where_the_floor_is_taken_in_the_direction_asked_for_the_exit_moves_and_that_is_told()
    {
        var board = new WrittenBoard
        {
            Cable = "{round: 4, angle: 270, through: floor}",
            Parts = ["{ref: U1, size: [36, 60, 7.5], side: bottom, at: [0, -8]}"],
            Holes = ["{circle: 70, count: 3, from: 90, diameter: 2.7}"],
        };
        HousingPlan plan = HousingPlanner.Plan(board.Read());
        FloorExitPlan exit = Assert.IsType<FloorExitPlan>(plan.CableExit);
        Assert.True(Angle.Between(exit.At, Angle.FromDegrees(270)).Degrees > 10);
        Assert.True(Assert.Single(plan.Refusals, refusal => refusal.Rule == "cable-exit-moved").IsReplaced);

        HousingPlan full =
            HousingPlanner.Plan((board with { Parts = ["{ref: U1, size: [68, 68, 7.5], round: true, side: bottom, at: [0, 0]}"] }).Read());
        Assert.Null(full.CableExit);
        Assert.False(Assert.Single(full.Refusals, refusal => refusal.Rule == "cable-exit-without-place").IsReplaced);
    }
}
