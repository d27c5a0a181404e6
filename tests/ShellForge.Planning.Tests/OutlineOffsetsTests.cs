using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Outlines;

namespace ShellForge.Planning.Tests;

public sealed class OutlineOffsetsTests
{
    [Fact]
    public void Sides_of_a_lattice_step_go_and_the_shape_stays()
    {
        Region letter = Region.Union(
            Region.Slot(new Point2(0, 0), new Point2(3, 0.01), 0.8), Region.Slot(new Point2(3, 0.01), new Point2(5, 2), 0.8),
            Region.Slot(new Point2(5, 2), new Point2(3, 4), 0.8), Region.Slot(new Point2(3, 4), new Point2(0, 0), 0.8));
        Region clean = OutlineOffsets.WithoutSlivers(letter);
        Assert.True(Shortest(letter) < OutlineOffsets.ShortestSide);
        Assert.True(Shortest(clean) >= OutlineOffsets.ShortestSide);
        Assert.Equal(letter.Loops.Length, clean.Loops.Length);
        Assert.InRange(clean.Less(letter).Area + letter.Less(clean).Area, 0, letter.Perimeter * OutlineOffsets.ShortestSide);
    }

    [Theory]
    [InlineData(-0.4)]
    [InlineData(0.6)]
    public void A_mitred_outline_keeps_its_corners_and_its_distance(double distance)
    {
        Point2[] corners = [new(0, 0), new(20, 0), new(20, 10), new(8, 10), new(8, 16), new(0, 16)];
        var moved = OutlineOffsets.Mitred([.. corners], distance);
        Assert.NotNull(moved);
        Assert.Equal(corners.Length, moved.Value.Length);
        for (int i = 0; i < corners.Length; i++)
        {
            Point2 side = corners[(i + 1) % corners.Length] - corners[i];
            double off = Point2.Cross(moved.Value[i] - corners[i], side) / side.Length;
            Assert.Equal(distance, off, 3);
        }
    }

    [Fact]
    public void An_outline_whose_sides_would_vanish_has_no_mitre() =>
        Assert.Null(OutlineOffsets.Mitred([new(0, 0), new(10, 0), new(10, 0.5), new(0, 0.5)], -0.4));

    private static double Shortest(Region region) => region.Loops.Min(loop =>
        loop.Select((p, i) => Point2.Distance(p, loop[(i + 1) % loop.Length])).Min());
}
