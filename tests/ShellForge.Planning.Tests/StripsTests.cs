using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Outlines;

namespace ShellForge.Planning.Tests;

public class StripsTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(45)]
    [InlineData(143)]
    [InlineData(270)]
    public void A_strip_from_far_out_ends_within_the_space_and_keeps_its_middle_line_and_width(double degrees)
    {
        var way = Angle.FromDegrees(degrees);
        Point2 through = Point2.Polar(175, way);
        Region strip = Strips.Along(through, way, 12, -20, 220);
        Assert.True(Math.Max(strip.Bounds.Max.X, -strip.Bounds.Min.X) <= Lattice.LimitMillimetres - 10);
        Assert.True(Math.Max(strip.Bounds.Max.Y, -strip.Bounds.Min.Y) <= Lattice.LimitMillimetres - 10);
        Assert.True(strip.FarthestAlong(way) > 230);
        var across = new Point2(-way.Sin, way.Cos);
        Assert.True(strip.Contains(Point2.Polar(200, way) + (5.9 * across)));
        Assert.False(strip.Contains(Point2.Polar(200, way) + (6.1 * across)));
        Assert.True(strip.Contains(Point2.Polar(156, way)));
        Assert.False(strip.Contains(Point2.Polar(154, way)));
    }

    [Fact]
    public void A_strip_that_begins_outside_the_space_is_empty() =>
        Assert.True(Strips.Along(new Point2(175, 0), Angle.Zero, 4, 80, 120).IsEmpty);
}
