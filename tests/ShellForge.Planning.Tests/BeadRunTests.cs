using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Closures;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Planning.Tests;

/// <summary>A snap bead runs where the wall gives; a board whose rim gives too little of its way is closed otherwise.</summary>
public class BeadRunTests
{
    private const string Oval = "{arcs: [[-22, -24], [22, -24], [22, 24, 180], [-22, 24], [-22, -24, 180]]}";
    private const string HalfMoon = "{arcs: [[-45, 0], [45, 0], [-45, 0, 180]]}";

    [Fact]
    public void A_square_carries_bead_on_its_sides_and_none_at_its_corners()
    {
        var run = BeadRun.Of(Region.Rectangle(new Point2(-30, -30), new Point2(30, 30)), 1.67, 0.3, 0.02);
        Assert.NotEmpty(run.Without);
        Assert.All(run.Without, place => Assert.InRange(Math.Max(30 - Math.Abs(place.X), 30 - Math.Abs(place.Y)), 0, 4));
        Assert.InRange(run.Held, 0.85, 0.95);
        Assert.InRange(run.LongestWithout, 0.01, 0.04);
    }

    [Fact]
    public void A_side_between_corners_that_is_shorter_than_what_bends_carries_none()
    {
        double shortest = BeadRun.ShortestSide(1.67, 0.3, 0.02);
        BeadRun Plate(double side) => BeadRun.Of(Region.Rectangle(new Point2(-40, 0), new Point2(40, side)), 1.67, 0.3, 0.02);
        Assert.Contains(Plate(shortest).Without, place => place.X > 39.9 && Math.Abs(place.Y - (shortest / 2)) < 1);
        Assert.DoesNotContain(Plate(shortest + 10).Without, place => place.X > 39.9 && Math.Abs(place.Y - (shortest / 2) - 5) < 1);
    }

    [Fact]
    public void Round_bends_carry_bead_all_the_way()
    {
        Assert.Empty(BeadRun.Of(Region.Disc(Point2.Origin, Ring.Hole(20)), 1.67, 0.3, 0.02).Without);
        Assert.IsType<SnapClosurePlan>(Closed(Oval, "snap").Closure);
    }

    [Theory]
    [InlineData(HalfMoon)]
    [InlineData("{polygon: [[-40, -40], [40, -40], [40, -10], [-5, -10], [-5, 40], [-40, 40]]}")]
    public void A_rim_with_a_few_corners_snaps_shut(string outline)
    {
        HousingPlan plan = Closed(outline, "snap");
        Assert.False(Assert.IsType<SnapClosurePlan>(plan.Closure).LeftOut.IsEmpty);
        Assert.Contains(plan.Decisions, decision => decision.Path == "closure.bead.run");
    }

    [Fact]
    public void A_gear_that_is_to_snap_is_refused_with_the_closures_that_do()
    {
        HousingPlan plan = Closed(Gear(16, 44), "snap");
        PlanRefusal refusal = Assert.Single(plan.Refusals, refusal => refusal.Rule == "snap-without-hold");
        Assert.Equal("take 'closure: screws' or 'closure: glue'", refusal.Remedy);
        Assert.IsType<ScrewClosurePlan>(plan.Closure);
    }

    [Fact]
    public void A_gear_without_a_wish_is_closed_by_what_can_be_built_and_nothing_is_refused()
    {
        HousingPlan plan = Closed(Gear(16, 44), null);
        Assert.Empty(plan.Refusals);
        Assert.IsType<ScrewClosurePlan>(plan.Closure);
        Assert.Contains("rim", plan.Decisions.Single(decision => decision.Path == "closure").Why, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_an_insert_no_screw_is_asked_for()
    {
        HousingPlan plan = Closed(Gear(16, 44), "snap", insert: false);
        Assert.Equal("take 'closure: glue'", Assert.Single(plan.Refusals, refusal => refusal.Rule == "snap-without-hold").Remedy);
        Assert.IsType<GlueClosurePlan>(plan.Closure);
        Assert.Empty(plan.Screws);
        Assert.DoesNotContain(plan.Shopping, item => item.Item.Contains("insert", StringComparison.OrdinalIgnoreCase));
    }

    private static HousingPlan Closed(string outline, string? closure, bool insert = true)
    {
        string text = new WrittenBoard { Outline = outline, Holes = [], Pixels = "{package: \"2020\", at: [-20, 20]}" }.Text;
        text = closure is null ? text.Replace("  closure: snap\n", "", StringComparison.Ordinal)
            : text.Replace("closure: snap", $"closure: {closure}", StringComparison.Ordinal);
        text = insert ? text
            : text.Replace("  insert: m2.5x4-od4.6\n", "", StringComparison.Ordinal)
                .Replace("  screw: pan\n", "", StringComparison.Ordinal);
        return HousingPlanner.Plan(ShellForge.Board.Yaml.BoardFileReader.Read("board.yaml", text, WrittenBoard.Shipped, []).File!);
    }

    private static string Gear(int teeth, double outer) => "{polygon: [" + string.Join(", ", Enumerable.Range(0, 4 * teeth)
        .Select(k => Point2.Polar(k % 4 < 2 ? outer : 0.85 * outer, Angle.FromDegrees(k * 90.0 / teeth)))
        .Select(p => FormattableString.Invariant($"[{p.X:0.##}, {p.Y:0.##}]"))) + "]}";
}
