using ShellForge.Board.Yaml;
using ShellForge.Board.Yaml.Overriding;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Batteries;
using ShellForge.Planning.Hands;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Planning.Tests;

public sealed class BatteryTests
{
    private static WrittenBoard Base => new()
    {
        Outline = "{disc: 110}",
        Holes = ["{circle: 100, count: 4, from: 45, diameter: 2.7}"],
        Closure = "screws",
    };

    public static TheoryData<string> Shipped => [.. WrittenBoard.Shipped.Batteries.Names];

    private static HousingPlan Plan(WrittenBoard board, params string[] overrides) => HousingPlanner.Plan(board.Read(overrides));

    private static BatteryBayPlan Bay(HousingPlan plan) => Assert.IsType<BatteryBayPlan>(plan.Bay);

    [Theory]
    [MemberData(nameof(Shipped))]
    public void Every_shipped_battery_has_a_bay_that_is_wider_than_it_and_a_tub_deep_enough_for_it_with_its_strap(string name)
    {
        HousingPlan plan = Plan(Base, $"housing.battery={name}");
        BatteryBayPlan bay = Bay(plan);
        BatteryBaySize size = bay.Size;
        Assert.InRange(size.PocketWidth - size.Battery.Width, 0.3, 1);
        Assert.InRange(size.PocketLength - size.Battery.Length, 4, 6);
        Assert.True(bay.Seat - plan.Stack.FloorTop >= 1.6, "no room for the strap under it");
        Assert.True(plan.Stack.BoardBottom - bay.Top >= 3, "no room for the strap over it");
        Assert.True(size.IsRound ? bay.Rim >= bay.Seat + (size.Battery.Thickness / 2) : bay.Rim < bay.Seat + size.Battery.Thickness);
        Assert.Equal(size.IsRound ? size.Battery.Thickness : 1.1 * size.Battery.Thickness, bay.Top - bay.Seat, 6);
    }

    // The oracle is the list of what stands on the floor, each as its own plan tells it.
    [Theory]
    [InlineData("screws", "none", "none")]
    [InlineData("screws", "magnets", "{round: 4, angle: 270}")]
    [InlineData("snap", "keyhole", "{round: 4, angle: 0, relief: knot}")]
    [InlineData("snap", "feet", "{round: 4, angle: 30, through: floor}")]
    [InlineData("twist", "tripod", "{part: J1}")]
    [InlineData("glue", "none", "{part: J1}")]
    public void All_that_stands_on_the_floor_keeps_off_the_bay(string closure, string mount, string cable)
    {
        foreach (string battery in new[] { "18650-bare", "pouch-602040", "{cell: aa, count: 2}", "{flat: [4, 12, 30], strap: tie}" })
        {
            HousingPlan plan = Plan(Base with
            {
                Closure = closure,
                Mount = mount,
                Cable = cable,
                Parts = ["{ref: J1, package: usb-c-receptacle, side: bottom, faces: 270, past-edge: 1.0}",
                    "{ref: C1, size: [8, 8, 11], side: bottom, at: [0, 0]}"],
            }, $"housing.battery={battery}", "housing.vents=floor", "housing.label={text: CELL, where: floor-inside}");
            Region bay = Bay(plan).Taken;
            Assert.True(plan.Shell.Cavity.Contains(bay));
            foreach (BossPlan boss in plan.Bosses)
            {
                Assert.True(bay.Distance(boss.At) >= (boss.Diameter / 2) + 0.3, boss.Name);
                Assert.All(boss.Webs, web => Assert.True(web.Distance(bay) > 0.3, boss.Name));
                Assert.All(boss.Gussets, gusset => Assert.True(
                    bay.Distance(boss.At + Point2.Polar((boss.Diameter / 2) + gusset.Foot, gusset.Direction)) > 0, boss.Name));
            }

            Assert.All(plan.CableExits, exit => Assert.True(exit.TakenInside(plan.Shell, 0).Intersect(bay).IsEmpty, exit.Spoken));
            Assert.All(plan.Openings, opening => Assert.True(opening.TakenInside.Intersect(bay).IsEmpty, opening.Ref));
            Assert.All(plan.Vents, vent => Assert.True(vent.Outline.Intersect(bay).IsEmpty));

            // Feet and a tripod's plate lie under the floor; what others take holds up to 2 mm of room round them.
            Region mounted = plan.Mount switch
            {
                null or FeetMountPlan => Region.Empty,
                TripodMountPlan tripod => Region.Disc(tripod.At, Ring.Peg(tripod.BossDiameter / 2)),
                { } other => other.Taken.Offset(-2),
            };
            Assert.True(mounted.Intersect(bay).IsEmpty, mount);
            Assert.True(plan.CableExits.IsEmpty == cable.Contains("J1", StringComparison.Ordinal) || cable == "none");
        }
    }

    [Fact]
    public void The_bay_lies_where_it_costs_least_depth()
    {
        WrittenBoard tall = Base with { Parts = ["{ref: C1, size: [10, 10, 16], side: bottom, at: [0, 0]}"] };
        HousingPlan beside = Plan(tall, "housing.battery=pouch-602040");
        HousingPlan under = Plan(tall, "housing.battery={cell: pouch-602040, at: [0, 0]}");

        Assert.True(Bay(beside).Taken.Distance(Point2.Origin) > 5);
        Assert.Equal(16.6, beside.Stack.BelowBoard, 1);
        Assert.InRange(under.Stack.BelowBoard - beside.Stack.BelowBoard, 11, 13);
        Assert.Contains("C1", under.Stack.BelowBoardFor, StringComparison.Ordinal);
        Assert.Contains(under.Decisions, decision => decision.Path == "battery.place" && decision.Why == "as asked");
    }

    [Theory]
    [InlineData("{disc: 70}", "18650", true)]
    [InlineData("{disc: 110}", "{cell: aa, count: 6}", true)]
    [InlineData("{ring: {outer: 110, bore: 60}}", "14500", true)]
    public void A_battery_without_a_place_is_told_with_the_length_that_fits(string outline, string battery, bool someFit)
    {
        WrittenBoard board = Base with { Outline = outline, Holes = [] };
        board = outline.Contains("ring", StringComparison.Ordinal)
            ? board with { Pixels = board.Pixels.Replace("46", "84", StringComparison.Ordinal) } : board;
        HousingPlan plan = Plan(board, $"housing.battery={battery}");
        PlanRefusal told = Assert.Single(plan.Refusals, refusal => refusal.Rule == "battery-without-place");
        Assert.Null(plan.Bay);
        Assert.True(told.Measured < told.Limit);
        Assert.Equal(outline.Contains("ring", StringComparison.Ordinal), told.Remedy.Contains("bore", StringComparison.Ordinal));
        Assert.Equal(someFit, told.Measured >= 5);
        if (!someFit)
        {
            return;
        }

        var (width, count) = battery switch { "18650" => (19, 1), "14500" => (14.5, 1), _ => (14.5, 6) };
        string Sized(double length) => FormattableString.Invariant($"housing.battery={{round: [{width}, {length}], count: {count}}}");
        Assert.NotNull(Plan(board, Sized(told.Measured - 0.5)).Bay);
        Assert.Null(Plan(board, Sized(told.Measured + 3)).Bay);
    }

    [Fact]
    public void A_battery_at_a_place_where_it_meets_posts_is_told_by_how_much()
    {
        // Square millimetres that stand out: the cell alone takes 65 x 18.
        double[] out0 = [.. new[] { 20, 30, 120 }.Select(x => StandsOut($"{{cell: 18650, at: [{x}, 0], along: 0}}"))];
        Assert.InRange(out0[0], 50, 120);
        Assert.InRange(out0[1], out0[0] + (5 * 18), 65 * 18);
        Assert.InRange(out0[2], 65 * 18, 80 * 32);

        // Without a direction the best one counts.
        Assert.InRange(StandsOut("{cell: 18650, at: [20, 0]}"), 0.1, out0[0]);

        static double StandsOut(string battery)
        {
            PlanRefusal told = Assert.Single(
                Plan(Base, $"housing.battery={battery}").Refusals, refusal => refusal.Rule == "battery-without-place");
            Assert.Equal("mm2", told.Unit);
            return told.Measured;
        }
    }

    [Fact]
    public void Its_wires_leave_at_the_end_that_looks_to_their_pads()
    {
        foreach (int side in new[] { 1, -1 })
        {
            HousingPlan plan = Plan(
                Base with { Wires = [$"{{name: cell, at: [{40 * side}, 3], gauge: 24, to: battery}}"] },
                "housing.battery={cell: 18650, at: [0, 0], along: 0}");
            Assert.Equal(side, Math.Sign(Bay(plan).WireEnd.X));
            Assert.Equal(70, BatteryHands.WireLength(plan));
        }
    }

    [Fact]
    public void It_goes_in_before_the_board_with_its_caution_told_once()
    {
        HousingPlan plan = Plan(Base, "housing.battery={cell: aa, count: 2, strap: tie}");
        int at = plan.Steps.ToList().FindIndex(step => step.Title == "Put the cells in");
        Assert.True(at >= 0 && plan.Steps[at + 1].Title == "Put the board in");
        Assert.Equal(HandCaution.Cells, Assert.Single(plan.Steps[at].Cautions));
        Assert.Equal(2, plan.Steps[at].Things.Length);
        Assert.Contains("side cutter", plan.Steps[at].Tools);
        Assert.Contains(plan.Shopping, item => item.Count == 2 && item.Item.StartsWith("battery aa", StringComparison.Ordinal));
        Assert.Contains(plan.Shopping, item => item.Item.StartsWith("cable tie, 4.8 mm wide", StringComparison.Ordinal));
        HousingPlan lithium = Plan(Base, "housing.battery=18650");
        Assert.Contains(lithium.Steps, step => step.Cautions.Contains(HandCaution.Lithium));
    }

    [Fact]
    public void What_calipers_said_of_a_battery_makes_its_bay()
    {
        BatteryBayPlan nominal = Bay(Plan(Base, "housing.battery=18650"));
        HousingPlan measured = Plan(Base, "housing.battery=18650", "housing.measured={battery: {diameter: 18.4, length: 67.1}}");
        Assert.Equal(nominal.Size.PocketWidth - 0.6, Bay(measured).Size.PocketWidth, 6);
        Assert.Equal(nominal.Size.PocketLength - 2.9, Bay(measured).Size.PocketLength, 6);
        Assert.Contains(measured.Decisions, decision => decision.Path == "housing.measured.battery.diameter");
    }

    [Theory]
    [InlineData("none", "{battery: {diameter: 18}}", "measured-without-battery")]
    [InlineData("18650", "{battery: {thickness: 6}}", "measured-other-battery")]
    [InlineData("pouch-602040", "{battery: {diameter: 6}}", "measured-other-battery")]
    [InlineData("pouch-602040", "{battery: {thickness: 12}}", "measured-far-off")]
    [InlineData("{cell: 18650, plug: J7}", "{}", "unknown-part")]
    public void What_contradicts_the_battery_is_told(string battery, string measured, string code)
    {
        string[] sets = battery == "none" ? [$"housing.measured={measured}"]
            : [$"housing.battery={battery}", $"housing.measured={measured}"];
        BoardReadResult read = BoardFileReader.Read("board.yaml", Base.Text, WrittenBoard.Shipped, [.. sets.Select(SetOverride.Parse)]);
        Assert.Single(read.Diagnostics, diagnostic => diagnostic.Code == code);
        Assert.Null(read.File);
    }
}
