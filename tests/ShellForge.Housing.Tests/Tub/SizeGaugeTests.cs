using ShellForge.Geometry.Numerics;
using ShellForge.Planning;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Housing.Tests.Tub;

/// <summary>Sizes fixed from outside, measured on the written parts as they go together.</summary>
public sealed class SizeGaugeTests
{
    [Theory]
    [InlineData("{disc: 80}", 92, 24)]
    [InlineData("{disc: 80}", 84.4, 12.8)]
    [InlineData("{ring: {outer: 96, bore: 46}}", 110, 30)]
    [InlineData("{polygon: [[-40, -30], [40, -30], [40, 30], [-40, 30]]}", 90, 20)]
    public void The_parts_are_as_wide_and_as_high_together_as_asked(string outline, double outer, double height)
    {
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard
        {
            Outline = outline,
            Holes = [],
            Pixels = "{package: \"2020\", circle: 54, count: 16, from: 90, direction: cw}",
            Light = "{through: front, look: blend, window: 8, evenness: dots}",
            Housing = [FormattableString.Invariant($"size: {{outer: {outer}, height: {height}}}")],
        }.Read());
        Assert.DoesNotContain(plan.Refusals, each => each.Rule.StartsWith("size-", StringComparison.Ordinal) && !each.IsNoted);
        var tub = RayGauge.OnAssembled(plan, PartNames.Tub);
        var cover = RayGauge.OnAssembled(plan, PartNames.Cover);

        // Across the widest line, above the edge's chamfer and below everything that goes through the wall.
        foreach ((RayGauge gauge, double z) in new[] { (tub, 1.0), (cover, plan.Stack.Front - 0.8) })
        {
            double[] hits = gauge.Hits(new Point3(-150, 0.013, z), new Point3(1, 0, 0));
            Assert.Equal(outer, hits[^1] - hits[0], 0.03);
        }

        Point2 inWall = new((outer / 2) - (plan.Shell.Wall / 2), 0.2);
        double[] low = tub.Hits(new Point3(inWall.X, inWall.Y, -50), new Point3(0, 0, 1));
        double[] high = cover.Hits(new Point3(inWall.X, inWall.Y, 100), new Point3(0, 0, -1));
        Assert.Equal(height, (100 - high[0]) - (low[0] - 50), 0.01);
    }
}
