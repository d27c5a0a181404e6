using System.Collections.Immutable;
using FsCheck.Xunit;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Testing;

namespace ShellForge.Geometry.Tests.Planar;

public sealed class ConstrainedDelaunayTests
{
    [Property(MaxTest = 80, Arbitrary = [typeof(Draws.Rows)])]
    public void Triangles_cover_a_region_once_with_its_own_corners_and_sides(Draws draws)
    {
        Region region = Trouble(draws);
        ImmutableArray<int> triangles = ConstrainedDelaunay.Triangulate(region.Loops, out ImmutableArray<Point2> corners);
        double area = 0;
        var uses = new Dictionary<(Point2, Point2), int>();
        for (int i = 0; i < triangles.Length; i += 3)
        {
            Point2[] t = [corners[triangles[i]], corners[triangles[i + 1]], corners[triangles[i + 2]]];
            double twice = Point2.Cross(t[1] - t[0], t[2] - t[0]);
            Assert.True(twice > 0);
            area += twice / 2;
            for (int k = 0; k < 3; k++)
            {
                Assert.True(uses.TryAdd((t[k], t[(k + 1) % 3]), 1));
            }
        }

        Assert.Equal(region.Area, area, 1e-9);

        // Edges without a partner are the region's sides, and all of them.
        HashSet<(Point2, Point2)> open = [.. uses.Keys.Where(e => !uses.ContainsKey((e.Item2, e.Item1)))];
        HashSet<(Point2, Point2)> sides = [.. region.Loops.SelectMany(l => l.Select((p, i) => (p, l[(i + 1) % l.Length])))];
        Assert.True(open.SetEquals(sides));
    }

    // Many corners on common lines and circles, shapes that touch at a corner, needles of one step.
    private static Region Trouble(Draws draws)
    {
        Region region = Region.Rectangle(new(-16, -16), new(16, 16));
        for (int i = 0; i < 12; i++)
        {
            Point2 at = new(draws.About(14), draws.About(14));
            Region piece = draws.Next(4) switch
            {
                0 => Region.Rectangle(at, at + new Point2(1 + draws.Next(4), draws.Next(2) == 0 ? Lattice.Step : 2)),
                1 => Region.Disc(at, new Ring(1 + draws.Next(3), RingSide.Outside, 32, Angle.Zero)),
                2 => Region.Polygon([at, at + new Point2(2, 1), at + new Point2(1, 2)]),
                _ => Region.Rectangle(at, at + new Point2(1, 1)).And(Region.Rectangle(at + new Point2(1, 1), at + new Point2(2, 2))),
            };
            region = draws.Next(5) == 0 ? region.And(piece) : region.Less(piece);
        }

        return region;
    }
}
