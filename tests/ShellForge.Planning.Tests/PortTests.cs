using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Planning.Tests;

public sealed class PortTests
{
    [Theory]
    [InlineData(1.5, 4, PortKind.SlotWithTongue, true)]
    [InlineData(1.0, 4, PortKind.SlotWithTongue, true)]
    [InlineData(0.4, 4, PortKind.SlotWithTongue, false)]
    [InlineData(0.0, 4, PortKind.OvermouldRecess, false)]
    [InlineData(-3.0, 4, PortKind.OvermouldRecess, false)]
    [InlineData(-0.2, 1, PortKind.OvermouldRecess, false)]
    public void The_port_follows_how_the_mouth_stands_to_the_wall(double pastEdge, int walls, PortKind kind, bool recess)
    {
        HousingPlan plan = HousingPlanner.Plan(WithUsb(pastEdge, walls).Read());
        PortPlan port = Assert.Single(plan.Ports);
        Assert.Equal(kind, port.Kind);
        Assert.Equal(recess, port.Recess is not null);
        Assert.Equal(kind == PortKind.SlotWithTongue, port.Tongue is not null);
        Assert.True(port.MouthBehind <= 0.5 + 1e-6, $"{port.MouthBehind}");
        Assert.Contains(plan.Decisions, d => d.Path == "ports.J1.kind");
    }

    [Fact]
    public void A_mouth_flush_with_the_walls_face_gets_a_closed_opening()
    {
        WrittenBoard board = WithUsb(0.0, 1) with { Housing = ["clearance: {board-edge: 0.3}"] };
        HousingPlan thin = HousingPlanner.Plan(board.Read());
        double face = thin.Shell.Round!.Outer - 40;
        HousingPlan plan = HousingPlanner.Plan((board with { Parts = Usb(Math.Round(face - 0.45, 2)) }).Read());
        Assert.InRange(plan.Ports.First().WallFace - 40 - (face - 0.45), 0, 0.5);
        Assert.Null(plan.Ports.First().Recess);
    }

    [Fact]
    public void Every_wall_left_behind_a_recess_is_at_least_two_lines()
    {
        foreach (double pastEdge in new[] { 0.9, 1.0, 1.2, 1.5 })
        {
            HousingPlan plan = HousingPlanner.Plan(WithUsb(pastEdge, 4).Read());
            Assert.True(plan.Ports.First().Recess!.FaceU - plan.Shell.Round!.Inner >= 0.86 - 1e-3);
        }
    }

    [Fact]
    public void A_plug_that_meets_no_wall_is_refused_and_gets_no_hole()
    {
        HousingPlan plan = HousingPlanner.Plan((WithUsb(0, 4) with
        {
            Outline = "{ring: {outer: 92, bore: 46}}",
            Holes = ["{circle: 86, count: 4, from: 45, diameter: 2.7}"],
            Pixels = "{package: \"2020\", circle: 66, count: 16, from: 90, direction: cw}",
            Parts = ["{ref: J1, package: usb-c-receptacle, side: bottom, at: [0, -30], faces: 90}"],
            Housing = ["bore: closed"],
        }).Read());
        Assert.Empty(plan.Ports);
        Assert.Contains(plan.Refusals, r => r.Rule == "no-way-for-plug" && r.Subject == "J1");
    }

    [Fact]
    public void A_part_between_mouth_and_wall_blocks_the_plug()
    {
        WrittenBoard board = WithUsb(-4, 4);
        Assert.DoesNotContain(HousingPlanner.Plan(board.Read()).Refusals, r => r.Rule == "plug-way-blocked");
        HousingPlan plan =
            HousingPlanner.Plan((board with { Parts = [.. Usb(-4), "{ref: C1, size: [2, 2, 2], side: bottom, at: [0, -38]}"] }).Read());
        Assert.Contains(plan.Refusals, r => r.Rule == "plug-way-blocked" && r.Message.Contains("C1", StringComparison.Ordinal));
    }

    [Fact]
    public void A_boss_beside_a_port_is_reported()
    {
        WrittenBoard board = WithUsb(1.0, 4) with { Holes = ["{circle: 60, count: 4, from: 270, diameter: 2.7}"] };
        HousingPlan plan = HousingPlanner.Plan(board.Read());
        Assert.Contains(plan.Decisions, d => d.Path == "ports.J1.sector" && d.Value.Contains("boss 1", StringComparison.Ordinal));
    }

    [Fact]
    public void A_port_may_open_into_the_bore()
    {
        HousingPlan plan = HousingPlanner.Plan((WithUsb(0, 4) with
        {
            Outline = "{ring: {outer: 150, bore: 100}}",
            Holes = ["{circle: 142, count: 4, from: 45, diameter: 2.7}"],
            Pixels = "{package: \"2020\", circle: 128, count: 16, from: 90, direction: cw}",
            Parts = ["{ref: J1, package: usb-c-receptacle, side: bottom, at: [0, -54], faces: 90}"],
        }).Read());
        PortPlan port = Assert.Single(plan.Ports);
        Assert.InRange(port.WallFace, -plan.Shell.Round!.BoreInner, -plan.Shell.Round.BoreInner + 1);
    }

    [Fact]
    public void The_cable_gets_a_notch_with_a_tongue_over_it_and_a_tie_post_level_with_it()
    {
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard { Cable = "{round: 4.5, angle: 270, relief: tie}" }.Read());
        NotchExitPlan exit = Assert.IsType<NotchExitPlan>(Assert.Single(plan.CableExits));
        Assert.Equal(5.0, exit.NotchWidth);
        Assert.Equal(exit.TiePost!.Top, exit.NotchBottom);
        Assert.True(exit.Roof.Bottom >= exit.NotchBottom + 4.5);
        Assert.True(exit.Roof.Bottom <= plan.Stack.PartingLine - 1.2);
        Assert.True(exit.Roof.SlotWidth >= exit.NotchWidth);
        Assert.Contains(plan.Shopping, i => i.Item.Contains("cable tie", StringComparison.Ordinal));
    }

    [Fact]
    public void Where_no_tie_post_fits_a_knot_is_planned_and_the_wish_refused()
    {
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard
        {
            Outline = "{ring: {outer: 60, bore: 48}}",
            Holes = [],
            Pixels = "{package: \"2020\", circle: 54, count: 16, from: 90, direction: cw}",
            Cable = "{round: 4.5, angle: 270, relief: tie}",
        }.Read());
        NotchExitPlan exit = Assert.IsType<NotchExitPlan>(Assert.Single(plan.CableExits));
        Assert.Null(exit.TiePost);
        Assert.True(exit.KnotRoom > 0);
        Assert.True(Assert.Single(plan.Refusals, r => r.Rule == "no-room-for-tie-post").IsReplaced);
    }

    [Fact]
    public void A_module_soldered_flat_gets_a_saddle_where_its_port_is_open()
    {
        WrittenBoard board = WithUsb(0, 4) with
        {
            Outline = "{disc: 110}",
            Holes = ["{circle: 98, count: 4, from: 45, diameter: 2.7}"],
            Parts = ["{ref: U1, package: controller-module-18x21, side: bottom, faces: 270, past-edge: 0.2, mounted: flat, port: open}"],
            Cable = "none",
        };
        HousingPlan plan = HousingPlanner.Plan(board.Read());
        SaddlePlan saddle = Assert.Single(plan.Saddles);
        PortPlan port = Assert.Single(plan.Ports);
        Assert.InRange(port.AxisZ - (port.Mouth.ShellHeight / 2) - saddle.Top, 0.2 - 1e-9, 0.4);
        Assert.True(saddle.StopTop > saddle.Top && saddle.StopTop < plan.Stack.BoardBottom);
        Assert.Empty(
            HousingPlanner.Plan((board with { Parts = [board.Parts[0].Replace("open", "closed", StringComparison.Ordinal)] }).Read())
                .Saddles);
    }

    [Fact]
    public void A_module_whose_connector_stands_outside_the_walls_has_no_rest_there()
    {
        HousingPlan plan = HousingPlanner.Plan(
            WrittenBoard.At(Repository.At("tests", "boards", "any", "module-reaching-past-the-walls.yaml")));
        Assert.Contains(plan.Ports, port => port.Ref == "J1");
        Assert.All(plan.Saddles, saddle => Assert.True(plan.Shell.Footprint.Contains(saddle.Rest)));
        Assert.Contains(plan.Decisions, decision => decision.Path == "saddles.J1.top"
            && decision.Why.Contains("outside the walls", StringComparison.Ordinal));
    }

    private static string[] Usb(double pastEdge) =>
        [FormattableString.Invariant($"{{ref: J1, package: usb-c-receptacle, side: bottom, faces: 270, past-edge: {pastEdge}}}")];

    private static WrittenBoard WithUsb(double pastEdge, int walls) => new()
    {
        Cable = "{part: J1}",
        Parts = Usb(pastEdge),
        Walls = walls,
    };
}
