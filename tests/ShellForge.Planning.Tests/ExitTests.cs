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
        Assert.IsType<FloorExitPlan>(Plan($"{{round: 4, angle: 270, through: floor{more}}}").CableExits.Single());

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_exit_tells_the_hands_what_to_do_and_takes_room_on_the_floor(ExitKind kind)
    {
        HousingPlan plan = Plan($"{{round: 4, angle: 270, relief: tie, through: {kind.ToString().ToLowerInvariant()}}}");
        CableExitPlan exit = Assert.IsAssignableFrom<CableExitPlan>(Assert.Single(plan.CableExits));
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
            FloorExitPlan exit = Assert.IsType<FloorExitPlan>(Assert.Single(plan.CableExits));
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
        FloorExitPlan exit = Assert.IsType<FloorExitPlan>(Assert.Single(plan.CableExits));
        Assert.True(Angle.Between(exit.At, Angle.FromDegrees(270)).Degrees > 10);
        Assert.True(Assert.Single(plan.Refusals, refusal => refusal.Rule == "cable-exit-moved").IsReplaced);

        HousingPlan full =
            HousingPlanner.Plan((board with { Parts = ["{ref: U1, size: [68, 68, 7.5], round: true, side: bottom, at: [0, 0]}"] }).Read());
        Assert.Empty(full.CableExits);
        Assert.False(Assert.Single(full.Refusals, refusal => refusal.Rule == "cable-exit-without-place").IsReplaced);
    }

    [Fact]
    public void One_cable_in_a_list_is_planned_as_one_by_itself()
    {
        foreach (string cable in new[] { "{round: 4, angle: 200}", "{round: 5, angle: 90, relief: knot}", "{round: 4, through: floor}" })
        {
            HousingPlan alone = Plan(cable, "{name: feed, at: [0, 2], gauge: 26}");
            HousingPlan listed = Plan($"[{cable}]", "{name: feed, at: [0, 2], gauge: 26}");
            Assert.Equal(alone.Decisions.Select(each => (each.Path, each.Value, each.Why)),
                listed.Decisions.Select(each => (each.Path, each.Value, each.Why)));
            Assert.Equal(alone.Steps.Select(step => step.Text), listed.Steps.Select(step => step.Text));
        }
    }

    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 12)];

    // Directions that crowd, all forms, all outlines: every exit has its place to itself, or is refused by the name of what is in its way.
    [Theory]
    [MemberData(nameof(Seeds))]
    public void Several_exits_keep_off_each_other_and_off_ports_or_are_refused(int seed)
    {
        var dice = new Random(seed);
        int count = dice.Next(2, 5);
        int about = dice.Next(360);
        string[] cables =
        [
            .. Enumerable.Range(0, count).Select(i => FormattableString.Invariant(
                $"{{name: c{i}, round: {dice.Next(2, 7)}, angle: {(about + dice.Next(60)) % 360}, ")
                    + $"through: {(dice.Next(3) == 0 ? "floor" : "wall")}, relief: {(dice.Next(2) == 0 ? "tie" : "knot")}}}"),
        ];
        bool port = dice.Next(2) == 0;
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard
        {
            Outline = dice.Next(3) switch
            {
                0 => "{disc: 80}",
                1 => "{ring: {outer: 96, bore: 46}}",
                _ => "{polygon: [[-40, -36], [40, -36], [40, 36], [-40, 36]]}",
            },
            Holes = [],
            Pixels = "{package: \"2020\", circle: 60, count: 16, from: 90, direction: cw}",
            Parts = port ? [$"{{ref: J1, package: usb-c-receptacle, side: bottom, faces: {about}, past-edge: 1.0}}"] : [],
            Wires = [.. Enumerable.Range(0, count).Select(i => $"{{name: w{i}, at: [{(4 * i) - 8}, 30], gauge: 28, to: c{i}}}")],
            Cable = $"[{(port ? "{part: J1}, " : "")}{string.Join(", ", cables)}]",
        }.Read());
        string[] refused = [.. plan.Refusals.Where(each => each.Rule == "cable-exit-without-place").Select(each => each.Subject)];
        Assert.Equal(Enumerable.Range(0, count).Select(i => $"c{i}"),
            plan.CableExits.Select(exit => exit.Name!).Concat(refused.Select(subject => subject["cable exit ".Length..]))
                .Order(StringComparer.Ordinal));
        Assert.All(plan.CableExits, exit => Assert.Same(exit, plan.ExitOf(Assert.Single(
            plan.Source.Board.Wires, wire => wire.To == exit.Name))));
        Assert.Equal(plan.CableExits.Length, plan.CableExits.Select(exit => exit.Spoken).Distinct().Count());
        foreach (CableExitPlan exit in plan.CableExits)
        {
            Region own = exit.TakenInside(plan.Shell, 0);
            Assert.All(plan.CableExits.Where(other => other != exit), other =>
            {
                Assert.True(exit.TakenOutside.IsEmpty || other.TakenInside(plan.Shell, 0).Distance(exit.TakenOutside) > 0);
                if (exit is NotchExitPlan one && other is NotchExitPlan two)
                {
                    Region Slot(NotchExitPlan notch) => plan.Shell.Footprint.Filled().Less(plan.Shell.Cavity.Filled())
                        .Intersect(Outlines.Strips.Radial(notch.At, notch.Roof.SlotWidth, 0, 200));
                    Assert.True(Slot(one).Distance(Slot(two)) > 4, $"{one.Name} and {two.Name}");
                }
                else
                {
                    Assert.True(own.Intersect(other.TakenInside(plan.Shell, 0)).Area < 1e-6, $"{exit.Name} and {other.Name}");
                }
            });
        }

        Assert.All(plan.Refusals, refusal => Assert.Empty(MessageStyle.Faults(refusal.Message, refusal.Remedy)));
    }

    [Theory]
    [InlineData(270, 262)]
    [InlineData(270, 283)]
    [InlineData(0, 0)]
    public void The_angle_that_the_refusal_of_a_notch_names_is_free(int first, int second)
    {
        HousingPlan Two(int at) => Plan($"[{{name: a, round: 4, angle: {first}}}, {{name: b, round: 4, angle: {at}}}]");
        PlanRefusal refusal = Assert.Single(Two(second).Refusals);
        Assert.Contains("the exit of the cable 'a'", refusal.Message, StringComparison.Ordinal);
        Assert.Empty(MessageStyle.Faults(refusal.Message, refusal.Remedy));
        string said = refusal.Remedy[(refusal.Remedy.IndexOf("'angle: ", StringComparison.Ordinal) + 8)..];
        string angle = said[..said.IndexOf('\'', StringComparison.Ordinal)];
        HousingPlan named = Two(int.Parse(angle, System.Globalization.CultureInfo.InvariantCulture));
        Assert.Empty(named.Refusals);
        Assert.Equal(2, named.CableExits.Length);
    }

    [Fact]
    public void Two_ties_are_bought_as_two_and_each_cable_has_its_step_by_its_name()
    {
        HousingPlan plan = Plan(
            "[{name: feed, round: 4, angle: 250}, {name: next, round: 4, angle: 290}, {name: probe, round: 3, through: floor}]");
        Assert.Equal(3, Assert.Single(plan.Shopping, item => item.Item.Contains("tie", StringComparison.Ordinal)).Count);
        Assert.All(new[] { "feed", "next", "probe" }, name =>
            Assert.Single(plan.Steps, step => step.Title.Contains($"'{name}'", StringComparison.Ordinal)));
        Assert.Equal(2, plan.Tongues.Count());
        Assert.Equal([plan.Openings.Length, plan.Openings.Length + 1], plan.Tongues.Select(each => each.Number));
    }
}
