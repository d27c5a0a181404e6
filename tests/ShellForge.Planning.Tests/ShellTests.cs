using ShellForge.Board.Profiles;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Planning.Tests;

public sealed class ShellTests
{
    [Theory]
    [InlineData("clean", 0.5)]
    [InlineData("tabs", 0.8)]
    [InlineData("v-scored", 0.8)]
    public void The_gap_round_the_board_follows_how_its_edge_was_made(string edge, double gap)
    {
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard { Edge = edge, Holes = [] }.Read());
        Assert.Equal(gap, plan.Shell.BoardEdgeGap, 9);
        Assert.Equal(40 + gap + plan.Shell.Wall, plan.Shell.Round!.Outer, 9);
    }

    [Theory]
    [InlineData("barrel-jack-5.5x2.1", 0.0, true)]
    [InlineData("usb-c-receptacle", 1.0, false)]
    public void Corners_of_a_part_at_a_round_edge_keep_off_the_wall(string package, double pastEdge, bool widens)
    {
        HousingPlan plan = HousingPlanner.Plan((new WrittenBoard
        {
            Outline = "{disc: 75}",
            Parts = [FormattableString.Invariant($"{{ref: J1, package: {package}, side: bottom, faces: 30, past-edge: {pastEdge}}}")],
            Holes = ["{circle: 40, count: 4, from: 45, diameter: 2.7}"],
            Cable = "{part: J1}",
        }).Read());
        double corner = PartEnvelope.OutlineOf(plan.Source.Board.Parts[0]).Loops[0].Max(point => point.Length);
        Assert.Equal(widens, plan.Shell.BoardEdgeGap > PlanRules.EdgeGapClean);

        // A body that goes through the wall in a slot asks for nothing; every other keeps its corners off it.
        double room = plan.Shell.Round!.Inner - corner;
        Assert.True(widens ? room >= 0.28 : Assert.Single(plan.Ports).Tongue is not null, $"{plan.Shell.Round!.Inner} {corner}");
    }

    [Fact]
    public void A_screw_head_near_the_edge_moves_the_wall_out_for_the_lip()
    {
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard { Holes = ["{circle: 74, count: 4, from: 45, diameter: 2.7}"] }.Read());
        double lipInner = plan.Shell.Round!.Inner - plan.Cover.LipGap - plan.Cover.LipThickness;
        Assert.True(lipInner >= 37 + (plan.Screws[0].Screw.HeadDiameter / 2));
        Assert.Contains(plan.Decisions, d => d.Path == "shell.gap" && d.Why.Contains("hole", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("[8, 8, 3]", "[38, 0]", true)]
    [InlineData("[30, 8, 3]", "[38, 0]", false)]
    [InlineData("[300, 300, 3]", "[30, 0]", false)]
    public void A_part_that_stands_a_little_over_the_edge_moves_the_wall_out_and_one_that_stands_far_out_does_not(
        string size, string at, bool moves)
    {
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard
        {
            Holes = [],
            Parts = [$"{{ref: C1, size: {size}, side: top, at: {at}}}"],
        }.Read());
        Assert.Equal(moves, plan.Shell.BoardEdgeGap > 1);
        Assert.InRange(plan.Shell.BoardEdgeGap, 0.5, 10);
    }

    [Fact]
    public void A_wall_that_is_not_whole_lines_is_taken_and_said()
    {
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard().Read("housing.walls=1.8 mm"));
        Assert.Equal(1.8, plan.Shell.Wall);
        Assert.Contains(plan.Decisions, d => d.Path == "shell.wall" && d.Why.Contains("not whole lines", StringComparison.Ordinal));
    }

    [Fact]
    public void Coaxial_walls_share_one_count()
    {
        HousingPlan plan = HousingPlanner.Plan(WrittenBoard.Sample("tide-lamp"));
        Assert.Equal(2, plan.Shell.Cavity.Loops.Length);
        Assert.All(plan.Shell.Cavity.Loops, l => Assert.Equal(plan.Shell.Round!.Count, l.Length));
        Assert.All(plan.Shell.Footprint.Loops, l => Assert.Equal(plan.Shell.Round!.Count, l.Length));
    }

    [Fact]
    public void Shrinkage_is_scaled_in_unless_the_slicer_does_it()
    {
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard().Read());
        double shrink = plan.Source.Print.Shell.Shrinkage;
        PartPlan tub = plan.Parts.First(p => p.Name == PartNames.Tub);
        Assert.Equal(1 / (1 - shrink), tub.ShrinkScale, 4);
        PrinterProfile printer = plan.Source.Print.Printer with { SlicerScalesShrinkage = true };
        HousingPlan left = HousingPlanner.Plan(plan.Source with { Print = plan.Source.Print with { Printer = printer } });
        Assert.All(left.Parts, p => Assert.Equal(1, p.ShrinkScale));
    }

    [Fact]
    public void A_bore_too_small_to_print_is_closed_and_a_wish_for_it_refused()
    {
        WrittenBoard board = new()
        {
            Outline = "{ring: {outer: 40, bore: 9}}",
            Holes = [],
            Pixels = "{package: \"2020\", circle: 26, count: 8, from: 90, direction: cw}",
        };
        HousingPlan plan = HousingPlanner.Plan(board.Read());
        Assert.False(plan.Shell.Round!.HasBore);
        Assert.DoesNotContain(plan.Refusals, r => r.Rule == "bore-too-small");
        HousingPlan wished = HousingPlanner.Plan((board with { Housing = ["bore: open"] }).Read());
        Assert.False(wished.Shell.Round!.HasBore);
        Assert.Contains(wished.Refusals, r => r.Rule == "bore-too-small");
    }

    [Fact]
    public void The_same_board_gives_the_same_plan()
    {
        HousingPlan once = HousingPlanner.Plan(WrittenBoard.Sample("dome-dial"));
        HousingPlan again = HousingPlanner.Plan(WrittenBoard.Sample("dome-dial"));
        Assert.Equal(once.Decisions.AsEnumerable(), again.Decisions.AsEnumerable());
        Assert.Equal(once.Shell.Footprint, again.Shell.Footprint);
    }

    [Theory]
    [InlineData("tide-lamp")]
    [InlineData("mooring-beacon")]
    [InlineData("dome-dial")]
    public void A_sample_meets_all_its_wishes(string name) =>
        Assert.Empty(HousingPlanner.Plan(WrittenBoard.Sample(name)).Refusals);

    [Fact]
    public void Bridges_of_a_baffle_stand_halfway_between_LEDs()
    {
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard
        {
            Outline = "{ring: {outer: 92, bore: 40}}",
            Holes = ["{circle: 84, count: 4, from: 0, diameter: 2.7}"],
            Pixels = "{package: \"5050\", circle: 62, count: 15, from: 90, direction: cw}",
        }.Read());
        Region[] bridges = [.. plan.Baffle!.Bridges.Parts];
        Assert.NotEmpty(bridges);

        // Half a pitch of 12.98 mm less half an LED and half a bridge, to a degree of the turn.
        double room = (12.98 / 2) - 2.5 - (plan.Baffle.Wall / 2) - 0.6;
        Assert.All(bridges, bridge => Assert.All(
            PartEnvelope.OnTop(plan.Source.Board),
            led => Assert.True(led.Outline.Distance(bridge) > room, $"{led.Ref} {led.Outline.Distance(bridge)}")));
    }
}
