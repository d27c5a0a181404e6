using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Planning.Tests;

public class HolderTests
{
    private static readonly WrittenBoard Bare = new() { Holes = [], Housing = ["hold: clamp"] };

    [Theory]
    [InlineData("{disc: 80}", "clean", "[]")]
    [InlineData("{disc: 80}", "tabs", "[]")]
    [InlineData("{disc: 80}", "clean", "[\"clearance: {board-edge: 1.4}\"]")]
    [InlineData("{ring: {outer: 110, bore: 24}}", "clean", "[]")]
    [InlineData("{polygon: [[-40, -36], [40, -36], [40, 36], [-40, 36]]}", "clean", "[]")]
    [InlineData("{arcs: [[-30, -26], [30, -26], [-30, -26, 278.2]]}", "v-scored", "[]")]
    public void A_clamp_ring_lies_on_the_rim_clear_of_wall_lip_and_all_that_stands_there(string outline, string edge, string more)
    {
        string[] housing = ["hold: clamp", .. more.Trim('[', ']', '"') is { Length: > 0 } line ? [line] : Array.Empty<string>()];
        BoardFile file = (Bare with { Outline = outline, Edge = edge, Housing = housing }).Read();
        HousingPlan plan = HousingPlanner.Plan(file);
        ClampPlan clamp = Assert.IsType<ClampPlan>(plan.Hold.Holder);
        Assert.Equal(("by the clamp ring", 0.0), (plan.Hold.DownBy, plan.Hold.Rise));
        Region rim = file.Board.Outline.Region.Filled();
        Region ring = clamp.Outline;

        // All round it reaches over the rim by what it says, and by more than the board may move aside.
        Region uncovered = rim.Less(rim.Offset(-clamp.Overlap + 0.02)).Less(ring);
        Assert.True(uncovered.Offset(-0.01).Area < 0.02 * ring.Area, $"{uncovered.Area} of {ring.Area} mm2");
        Assert.True(clamp.Overlap >= plan.Shell.BoardEdgeGap + 0.2, $"{clamp.Overlap} over, gap {plan.Shell.BoardEdgeGap}");
        Assert.True(ring.Intersect(rim.Offset(-clamp.Overlap - 0.02)).Area < 0.01);
        double beside = PartEnvelope.OnTop(file.Board).Min(part => part.Outline.Distance(ring));
        Assert.True(beside > 0.49, $"{beside}");
        Region walls = plan.Shell.Walls.Less(clamp.Pockets);
        Assert.True(walls.Distance(ring) > 0.3, $"{walls.Distance(ring)}");
        Assert.True(clamp.Top < plan.Cover.LipBottom - 0.2);

        // Ears lie on posts that end a little lower than the board, and heads end under the cover.
        ScrewJointPlan[] screws = [.. plan.Screws.Where(screw => screw.Use == ScrewUse.Clamp)];
        Assert.True(screws.Length >= 3);
        Assert.All(screws, screw =>
        {
            Assert.True(ring.Contains(screw.At));
            Assert.True(rim.Distance(screw.At) > screw.Boss.Diameter / 2);
            Assert.InRange(plan.Stack.BoardTop - screw.Boss.Top, 0.1, 0.3);
            Assert.True(screw.SeatZ + screw.Screw.HeadHeight <= plan.Stack.PartingLine - 0.3);
            Assert.True(screw.TipGap >= 0.5 && screw.Engagement >= screw.EngagementWanted - 1e-6);
        });
        Assert.Contains(plan.Parts, part => part.Name == PartNames.Clamp);
        Assert.Contains(plan.Shopping, item => item.Item.Contains("insert", StringComparison.Ordinal) && item.Count == screws.Length);
        Assert.Empty(plan.Refusals);
    }

    [Fact]
    public void A_clamp_ring_leaves_out_where_something_stands_at_the_rim_and_keeps_its_ears_off_it()
    {
        BoardFile file = (Bare with
        {
            Pixels = "{package: \"5050\", circle: 72, count: 16, from: 90}",
            Wires = ["{name: in, polar: [38.6, 20], side: top, conductors: 1, diameter: 1}"],
        }).Read();
        HousingPlan plan = HousingPlanner.Plan(file);
        ClampPlan clamp = Assert.IsType<ClampPlan>(plan.Hold.Holder);
        Assert.Contains(plan.Decisions, decision => decision.Path == "hold.clamp.pieces");
        Assert.InRange(clamp.Outline.Distance(file.Board.Wires.Single().At), 1.49, 2.6);
        Assert.True(PartEnvelope.OnTop(file.Board).Min(part => part.Outline.Distance(clamp.Outline)) > 0.49);
        Assert.All(clamp.Outline.Parts, piece => Assert.Contains(clamp.Screws, piece.Contains));
    }

    [Fact]
    public void A_board_with_one_hole_keeps_its_screw_and_gets_two_ears()
    {
        HousingPlan plan = HousingPlanner.Plan((Bare with { Holes = ["{at: [0, 0], diameter: 2.7}"] }).Read());
        Assert.Equal("by the clamp ring, and by its screw", plan.Hold.DownBy);
        Assert.Equal([(ScrewUse.Board, 1), (ScrewUse.Clamp, 2)],
            plan.Screws.GroupBy(screw => screw.Use).Select(group => (group.Key, group.Count())));
    }

    [Theory]
    [InlineData("{disc: 60}", 1.6, "")]
    [InlineData("{disc: 60}", 1.6, "size: {outer: 65.4}")]
    [InlineData("{disc: 90}", 1.0, "")]
    [InlineData("{polygon: [[-40, -36], [40, -36], [40, 36], [-40, 36]]}", 1.6, "")]
    public void Clips_are_as_long_as_their_strain_asks_and_have_the_room_to_bend(string outline, double thickness, string more)
    {
        BoardFile file = (Bare with
        {
            Outline = outline,
            Thickness = thickness,
            Housing = ["hold: clips", .. more.Length > 0 ? [more] : Array.Empty<string>()],
            Pixels = "{package: \"2020\", circle: 40, count: 12, from: 90}"
        }).Read();
        HousingPlan plan = HousingPlanner.Plan(file);
        ClipsPlan clips = Assert.IsType<ClipsPlan>(plan.Hold.Holder);
        double length = clips.HookSide.Where(point => point.X < 0).Min(point => point.Y) - clips.Bottom;
        Assert.Equal(clips.Strain, 1.5 * clips.Thickness * clips.Bend / (length * length), 4);
        Assert.InRange(clips.Strain, 0.7 * 0.008, 0.008);
        Assert.Equal(clips.Reach + 0.2, clips.Bend, 6);

        // Even where the board lies against the wall across, each hook still reaches over it; behind each post there is room.
        Assert.True(clips.Reach >= plan.Shell.BoardEdgeGap + 0.2);
        Region bent = Region.Union(clips.Hooks.Select(hook => clips.Posts.Intersect(Region.Disc(hook.Edge, Ring.Hole(6)))
            .Moved(Point2.Polar(clips.Bend, hook.Outward))));
        Assert.True(plan.Shell.Walls.Less(clips.Slots).Less(clips.Posts.Offset(0.01)).Intersect(bent).Area < 0.01);
        Assert.All(plan.Bosses, boss => Assert.True(
            clips.Slots.And(clips.Posts).Distance(boss.At) > (boss.Diameter / 2) + 0.3, boss.Name));
        Assert.True(clips.Top <= plan.Cover.LipBottom - 0.2);

        // A board a tenth thicker than listed goes under the hook at its edge.
        double underHook = clips.HookSide.Min(point => point.Y) + plan.Shell.BoardEdgeGap;
        Assert.True(underHook >= plan.Stack.BoardTop + (0.1 * thickness), $"{underHook} over {plan.Stack.BoardTop}");
    }

    [Fact]
    public void What_the_closed_housing_does_not_hold_gets_a_holder_of_its_own()
    {
        WrittenBoard loose = Bare with
        {
            Outline = "{disc: 60}",
            Pixels = "{package: \"2020\", circle: 38, count: 12, from: 90, direction: cw}",
            Closure = "twist",
            Housing = [],
            Light = "{through: front, look: blend, window: disc, evenness: dots}",
            Cable = "{part: J1}",
            Parts =
            [
                "{ref: C1, size: [3, 4, 4], side: top, circle: 53.7, count: 24, from: 0, skip: [17, 18, 19, 20]}",
                "{ref: J1, package: usb-c-receptacle, side: top, faces: 270, past-edge: 0}",
            ],
        };
        HousingPlan plan = HousingPlanner.Plan(loose.Read());
        Assert.NotNull(plan.Hold.Holder);
        Assert.Contains(plan.Decisions, decision => decision is { Path: "hold", Value: "clamp" or "clips" });
        Assert.Null(HousingPlanner.Plan((loose with { Parts = [.. loose.Parts.Skip(1)] }).Read()).Hold.Holder);
        Assert.DoesNotContain(plan.Refusals, refusal => refusal.Rule == "board-not-kept-down");
    }

    [Theory]
    [InlineData("clips")]
    [InlineData("clamp")]
    public void What_stands_in_the_way_of_all_places_is_told_by_name(string hold)
    {
        HousingPlan plan = HousingPlanner.Plan((Bare with
        {
            Housing = [$"hold: {hold}"],
            Wires = [.. Enumerable.Range(0, 36).Select(
                i => $"{{name: w{i}, polar: [38.6, {10 * i}], side: top, conductors: 1, diameter: 1}}")],
        }).Read());
        PlanRefusal refusal = Assert.Single(plan.Refusals, refusal => refusal.Rule == "hold-without-place");
        Assert.Matches(@"round the board: w\d+, w\d+, w\d+ and others stand in the way\.$", refusal.Message);
        Assert.Matches(@"leave \d(\.\d)? mm of the rim free", refusal.Remedy);
    }

    [Theory]
    [InlineData("hold: clamp")]
    [InlineData("hold: clips")]
    public void Where_the_wall_is_lit_the_wish_is_refused(string hold)
    {
        HousingPlan plan = HousingPlanner.Plan((Bare with
        {
            Housing = [hold],
            Light = "{through: wall}",
            Pixels = "{package: 4020-side, circle: 74, count: 16, from: 90, direction: cw, facing: out}",
        }).Read());
        Assert.Null(plan.Hold.Holder);
        Assert.Contains(plan.Refusals, refusal => refusal.Rule == "hold-without-place");
    }

    [Fact]
    public void Clips_that_a_widened_gap_would_bend_too_far_are_refused_with_that_gap()
    {
        HousingPlan plan = HousingPlanner.Plan(
            WrittenBoard.At(Repository.At("tests", "boards", "any", "clips-far-from-a-wide-wall.yaml")));
        PlanRefusal refusal = Assert.Single(plan.Refusals, refusal => refusal.Rule == "clips-overstrained");
        Assert.Contains($"over a gap of {plan.Shell.BoardEdgeGap:0.##}", refusal.Message, StringComparison.Ordinal);
        Assert.Null(plan.Hold.Holder);
    }
}
