using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;
using ShellForge.Planning.Posts;
using ShellForge.Testing;

namespace ShellForge.Planning.Tests;

public sealed class BossTests
{
    [Theory]
    [InlineData("{disc: 60}")]
    [InlineData("{disc: 130}")]
    [InlineData("{disc: 230}")]
    [InlineData("{ring: {outer: 92, bore: 46}}")]
    public void A_board_without_holes_lies_on_rests(string outline)
    {
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard { Outline = outline, Holes = [], Pixels = Light(outline) }.Read());
        Assert.True(plan.Bosses.Length >= 3);
        Assert.All(plan.Bosses, b => Assert.Equal(BossUse.Rest, b.Use));
        Assert.All(plan.Bosses, b => Assert.Equal(plan.Stack.BoardBottom, b.Top));
        double radius = plan.Source.Board.Outline.OuterRadius;
        Assert.All(plan.Bosses, b => Assert.Equal(1.2, radius - (b.At.Length - (b.Diameter / 2)), 3));
    }

    [Fact]
    public void Rests_dodge_parts_at_the_rim()
    {
        string[] parts = [.. Enumerable.Range(0, 8).Select(i => $"{{ref: C{i}, size: [6, 6, 3], side: bottom, polar: [36, {i * 20}]}}")];
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard { Holes = [], Parts = parts }.Read());
        Assert.Equal(3, plan.Bosses.Length);
        Assert.All(plan.Bosses, rest => Assert.All(plan.Source.Board.Parts, part => Assert.True(
            PartEnvelope.OutlineOf(part)
                .Distance(Region.Disc(rest.At, Ring.Peg(rest.Diameter / 2)).Intersect(plan.Source.Board.Outline.Region)) >= 0.5)));
    }

    [Fact]
    public void A_boss_near_the_wall_is_tied_to_it_with_room_for_wires_over_the_web()
    {
        WrittenBoard board = new()
        {
            Holes = ["{circle: 72, count: 4, from: 45, diameter: 2.7}"],
            Wires = ["{name: feed, at: [0, 4], conductors: 2, gauge: 28, to: out}"]
        };
        HousingPlan plan = HousingPlanner.Plan(board.Read());
        double bundle = 2 * plan.Source.Board.Wires[0].Diameter;
        Assert.All(plan.Bosses, b => Assert.Single(b.Webs));
        Assert.All(plan.Bosses, b => Assert.True(plan.Stack.BoardBottom - b.WebTop >= 1.3 * bundle - 1e-9));
        Assert.All(plan.Bosses, b => Assert.True(b.Webs[0].Distance(b.At) < b.Diameter / 2));
        Assert.All(plan.Bosses, b => Assert.True(PostRoom.Of(plan.Shell).Contains(b.Webs[0])));
    }

    [Fact]
    public void A_web_stays_below_a_part_that_hangs_over_it()
    {
        WrittenBoard board = new()
        {
            Holes = ["{circle: 72, count: 4, from: 45, diameter: 2.7}"],
            Insert = "m2.5x5.7-od4.6",
            Parts = ["{ref: C9, size: [3, 3, 2.0], side: bottom, polar: [38, 45]}"]
        };
        HousingPlan plan = HousingPlanner.Plan(board.Read());
        BossPlan near = plan.Bosses.MinBy(b => Angle.Between(Angle.Of(b.At), Angle.FromDegrees(45)).Degrees)!;
        BossPlan far = plan.Bosses.MaxBy(b => Angle.Between(Angle.Of(b.At), Angle.FromDegrees(45)).Degrees)!;
        Assert.NotEmpty(near.Webs);
        Assert.True(near.WebTop <= plan.Stack.BoardBottom - 2.0 - 0.5 + 1e-9);
        Assert.True(far.WebTop > near.WebTop, $"no web is higher where nothing hangs: {far.WebTop}");
    }

    [Fact]
    public void A_slender_boss_gets_gussets_that_meet_no_part()
    {
        WrittenBoard board = new()
        {
            Outline = "{disc: 110}",
            Holes = ["{circle: 60, count: 4, from: 45, diameter: 2.2}"],
            Insert = "m2x3-od3.0",
            Pixels = "{package: \"2020\", circle: 90, count: 16, from: 90, direction: cw}",
            Parts = ["{ref: C1, size: [10, 10, 16], side: bottom, at: [0, 0]}",
                "{ref: C2, size: [6, 6, 14], side: bottom, polar: [22, 45]}"],
        };
        HousingPlan plan = HousingPlanner.Plan(board.Read());
        Assert.All(plan.Bosses, b => Assert.NotEmpty(b.Gussets));
        Region part = PartEnvelope.OutlineOf(plan.Source.Board.Parts[1]);
        Assert.All(plan.Bosses, b => Assert.All(b.Gussets, g => Assert.True(GussetDecision.Outline(b, g).Distance(part) >= 0.5)));
    }

    [Theory]
    [InlineData("{ring: {outer: 150, bore: 100}}", "bore side")]
    [InlineData("{disc: 80}", "board's own holes")]
    [InlineData("{ring: {outer: 44.5, bore: 20}}", "ears")]
    public void Closure_screws_stand_where_there_is_room(string outline, string where)
    {
        bool small = outline.Contains("44.5", StringComparison.Ordinal);
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard
        {
            Outline = outline,
            Holes = small ? [] : [outline.Contains("150", StringComparison.Ordinal)
                ? "{circle: 142, count: 4, from: 45, diameter: 2.7}" : "{circle: 70, count: 4, from: 45, diameter: 2.7}"],
            Pixels = Light(outline),
            Closure = "screws",
        }.Read());
        Decision decision = plan.Decisions.First(d => d.Path == "closure.screws");
        Assert.Contains(where, decision.Why, StringComparison.Ordinal);
        Assert.True(plan.Screws.Count(s => s.Use == ScrewUse.Closure) >= 3);

        // No closure boss reaches into the room that the board is lowered through, unless it stands under the board.
        Assert.All(plan.Bosses.Where(b => b.Use == BossUse.Closure), b =>
            Assert.True(plan.Shell.Cavity.Distance(b.At) >= (b.Diameter / 2) - 1e-3));
        Assert.All(plan.Shell.Lobes, l => Assert.True(plan.Shell.Footprint.Contains(l.At)));
    }

    [Fact]
    public void A_closed_bore_keeps_the_closure_screws_inside()
    {
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard
        {
            Outline = "{ring: {outer: 150, bore: 100}}",
            Holes = ["{circle: 142, count: 4, from: 45, diameter: 2.7}"],
            Pixels = "{package: \"2020\", circle: 126, count: 24, from: 90, direction: cw}",
            Closure = "screws",
            Housing = ["bore: closed"],
        }.Read());
        Assert.False(plan.Shell.Round!.HasBore);
        Assert.Empty(plan.Shell.Lobes);
        Assert.All(plan.Bosses.Where(b => b.Use == BossUse.Closure), b => Assert.True(b.At.Length + (b.Diameter / 2) <= 49.5 + 1e-6));
    }

    private static string Light(string outline) => outline switch
    {
        var o when o.Contains("150", StringComparison.Ordinal) => "{package: \"2020\", circle: 126, count: 24, from: 90, direction: cw}",
        var o when o.Contains("92", StringComparison.Ordinal) => "{package: \"2020\", circle: 66, count: 16, from: 90, direction: cw}",
        var o when o.Contains("44.5", StringComparison.Ordinal) => "{package: \"2020\", circle: 38, count: 16, from: 90, direction: cw}",
        var o when o.Contains("60", StringComparison.Ordinal) => "{package: \"2020\", circle: 40, count: 16, from: 90, direction: cw}",
        _ => "{package: \"2020\", circle: 46, count: 16, from: 90, direction: cw}",
    };
}
