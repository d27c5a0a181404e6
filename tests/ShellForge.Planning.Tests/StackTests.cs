using System.Globalization;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Planning.Tests;

public sealed class StackTests
{
    [Theory]
    [InlineData("a tall part", "C9", 8.4)]
    [InlineData("a long insert", "the insert m3x5.7-od4.6", 6.0)]
    [InlineData("solder", "soldered wires", 4.0)]
    [InlineData("a tied cable", "the cable on its tie post", 9.2)]
    [InlineData("a plug", "the plug at J1", 5.4)]
    [InlineData("a keyhole", "keyhole", 0)]
    [InlineData("nothing", "the insert m2x3-od3.6", 3.2)]
    public void The_largest_need_drives_the_standoffs_and_is_named(string what, string driver, double below)
    {
        var board = new WrittenBoard { Insert = "m2x3-od3.6" };
        board = what switch
        {
            "a tall part" => board with { Parts = ["{ref: C9, size: [6.3, 6.3, 7.7], side: bottom, at: [20, 0]}"] },
            "a long insert" => board with { Insert = "m3x5.7-od4.6", Holes = ["{circle: 68, count: 4, from: 45, diameter: 3.2}"] },
            "solder" => board with { Wires = ["{name: feed, at: [0, 4], conductors: 2, gauge: 24, to: out}"] },
            "a tied cable" => board with { Cable = "{round: 4.5, angle: 270, relief: tie}" },
            "a plug" => board with
            {
                Cable = "{part: J1}",
                Parts = ["{ref: J1, package: usb-c-receptacle, side: bottom, faces: 270, past-edge: 1.0}"],
            },
            "a keyhole" => board with { Mount = "keyhole" },
            _ => board,
        };
        HousingPlan plan = HousingPlanner.Plan(board.Read());
        Decision decision = Assert.Single(plan.Decisions, d => d.Path == "stack.below-board");
        Assert.Contains(driver, decision.Why, StringComparison.Ordinal);
        Assert.Equal(plan.Stack.BelowBoard, double.Parse(decision.Value, CultureInfo.InvariantCulture), 6);
        if (below > 0)
        {
            Assert.Equal(below, plan.Stack.BelowBoard, 6);
        }
    }

    [Fact]
    public void What_the_driver_costs_is_the_standoff_height_without_it()
    {
        var bare = new WrittenBoard { Insert = "m2x3-od3.6" };
        WrittenBoard tall = bare with { Parts = ["{ref: C9, size: [6.3, 6.3, 7.7], side: bottom, at: [20, 0]}"] };
        double with = HousingPlanner.Plan(tall.Read()).Stack.BelowBoard;
        double without = HousingPlanner.Plan(bare.Read()).Stack.BelowBoard;
        Decision decision = Assert.Single(HousingPlanner.Plan(tall.Read()).Decisions, d => d.Path == "stack.below-board");
        Assert.Contains($"C9 costs {Reasons.Mm(Math.Round(with - without, 3))}", decision.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_plastic_height_is_a_whole_layer()
    {
        HousingPlan plan = HousingPlanner.Plan(WrittenBoard.Sample("tide-lamp"));
        double[] heights = [plan.Stack.FloorTop, plan.Stack.BoardBottom, plan.Stack.PartingLine, .. plan.Bosses.Select(b => b.Top),
            .. plan.Bosses.Select(b => b.Top - b.Hole!.Depth), .. plan.Ports.Select(p => p.OpeningBottom),
            .. plan.Ports.Select(p => p.OpeningTop)];
        Assert.All(heights, z => Assert.Equal(Math.Round(z / 0.2), z / 0.2, 6));
    }

    [Fact]
    public void The_parting_line_lies_over_the_board_and_over_the_plug()
    {
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard
        {
            Cable = "{part: J1}",
            Parts = ["{ref: J1, package: usb-c-receptacle, side: top, faces: 270, past-edge: 1.0}"],
        }.Read());
        Assert.True(plan.Stack.PartingLine >= plan.Stack.BoardTop + 2);
        Assert.True(plan.Stack.PartingLine >= plan.Ports.First().Recess!.Top + 1.2);
    }

    [Fact]
    public void The_cover_s_wall_comes_down_above_joints_at_the_rim()
    {
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard
        {
            Outline = "{ring: {outer: 92, bore: 40.1}}",
            Holes = ["{circle: 84.4, count: 4, from: 90, diameter: 2.2}"],
            Pixels = "{package: \"5050\", circle: 66, count: 25, from: 90, direction: cw}",
            Insert = "m2x4-od3.6",
            Closure = "screws",
            Parts = ["{ref: J1, package: barrel-jack-5.5x2.1, side: bottom, faces: 135, past-edge: 1.0}"],
            Cable = "{part: J1}",
        }.Read());
        double joints = plan.Source.Board.Parts.Single(part => part.Ref == "J1").JointProtrusion;
        Assert.True(joints > 1);
        Assert.True(plan.Stack.PartingLine >= plan.Stack.BoardTop + joints + 0.25,
            $"{plan.Stack.PartingLine} over {plan.Stack.BoardTop} and {joints}");
    }

    [Fact]
    public void The_bezel_lies_above_screw_heads_by_the_room_that_a_check_asks_for()
    {
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard
        {
            Outline = "{disc: 40}",
            Holes = ["{circle: 30.4, count: 6, from: 45, diameter: 3.2}"],
            Pixels = "{package: \"3535\", circle: 18, count: 7, from: 90, direction: cw}",
            Insert = "m3x3-od4.2",
        }.Read());
        double heads = plan.Screws.Where(screw => screw.Use == ScrewUse.Board).Max(screw => screw.SeatZ + screw.Screw.HeadHeight);
        Assert.True(plan.Stack.Front - plan.Cover.BezelThickness >= heads + 0.5 - 1e-6,
            $"{plan.Stack.Front - plan.Cover.BezelThickness} {heads}");
    }

    [Fact]
    public void A_part_of_unknown_height_is_planned_for_all_the_same()
    {
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard
        {
            Parts = ["{ref: X1, size: [12, 10], side: bottom, at: [10, 0]}"],
        }.Read());
        Assert.True(plan.Stack.BelowBoard >= 3);
    }
}
