using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Checks.Tests.Fit;

public class NearestPlaceTests
{
    private static readonly Region Bar = Region.Rectangle(new Point2(-25, 0), new Point2(25, 4));

    [Fact]
    public void A_long_bar_is_nearest_to_a_post_beside_its_middle_and_not_at_a_corner()
    {
        Region post =
            Region.Rectangle(new Point2(3, -2), new Point2(4, -0.2)).And(Region.Rectangle(new Point2(3.4, -1), new Point2(3.6, -0.1)));
        (Point2 on, Point2 other) = NearestPlace.Between(Bar, post);
        Assert.InRange(on.X, 3.399, 3.601);
        Assert.Equal(0, on.Y, 3);
        Assert.InRange(other.X, 3.399, 3.601);
        Assert.Equal(-0.1, other.Y, 3);
        Assert.Equal(other, NearestPlace.On(post, Bar));
    }

    [Fact]
    public void A_corner_over_a_long_wall_is_met_under_the_corner()
    {
        Region wall = Region.Rectangle(new Point2(-100, -9), new Point2(100, -1));
        (Point2 on, Point2 other) = NearestPlace.Between(Bar.Turned(Angle.FromDegrees(10)).Moved(new Point2(0, 8)), wall);
        Assert.Equal(on.X, other.X, 3);
        Assert.Equal(-25 * Angle.FromDegrees(10).Cos, on.X, 2);
        Assert.Equal(-1, other.Y, 3);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(45)]
    [InlineData(70)]
    public void Bodies_stand_as_deep_in_each_other_at_a_slant_as_along_the_axes(double degrees)
    {
        Region deep = Bar.Intersect(Bar.Moved(new Point2(0, 3.7)));
        Assert.Equal(0.3, CommonWidth.Of(deep.Turned(Angle.FromDegrees(degrees))), 3);
        Assert.Equal(0, CommonWidth.Of(Region.Empty));
    }
}
