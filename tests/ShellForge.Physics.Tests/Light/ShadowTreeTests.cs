using ShellForge.Geometry.Numerics;
using ShellForge.Physics.Light;

namespace ShellForge.Physics.Tests.Light;

public class ShadowTreeTests
{
    [Fact]
    public void The_tree_answers_as_trying_every_triangle_does()
    {
        var dice = new Random(7);
        Point3 Somewhere() => new(dice.NextDouble() * 40, dice.NextDouble() * 40, dice.NextDouble() * 8);
        List<(Point3 A, Point3 B, Point3 C)> triangles = [];
        var builder = new ShadowTreeBuilder();
        for (int i = 0; i < 700; i++)
        {
            Point3 a = Somewhere();
            Point3 b = a + (0.1 * (Somewhere() - new Point3(20, 20, 4)));
            Point3 c = a + (0.1 * (Somewhere() - new Point3(20, 20, 4)));
            triangles.Add((a, b, c));
            builder.Add(a, b, c, i);
        }

        ShadowTree tree = builder.Build();
        int blocked = 0;
        for (int n = 0; n < 4000; n++)
        {
            Point3 from = Somewhere();
            Point3 to = Somewhere();
            (double nearest, int which) = FirstOf(triangles, from, to - from);
            bool blocks = nearest < 1;
            blocked += blocks ? 1 : 0;

            // A ray that grazes an edge by a rounding error may fall either way.
            if (Math.Abs(nearest - 1) < 1e-4)
            {
                continue;
            }

            Assert.Equal(blocks, tree.Blocks(from, to));
            double length = Point3.Distance(from, to);
            bool met = tree.Meets(from, (1 / length) * (to - from), length, out SurfaceHit hit);
            Assert.Equal(blocks, met);
            if (met)
            {
                Assert.Equal(which, hit.Material);
                Assert.InRange(hit.Distance, (nearest * length) - 1e-3, (nearest * length) + 1e-3);
            }
        }

        Assert.InRange(blocked, 400, 3600);
    }

    [Fact]
    public void A_wall_of_many_triangles_has_no_seam_that_light_passes()
    {
        // A fan of thin triangles in one plane; rays aimed at its edges and its hub.
        var builder = new ShadowTreeBuilder();
        const int count = 97;
        Point3 Rim(int i) => new(30 * Math.Cos(2 * Math.PI * i / count), 30 * Math.Sin(2 * Math.PI * i / count), 10);
        for (int i = 0; i < count; i++)
        {
            builder.Add(new(0.1, 0.2, 10), Rim(i), Rim(i + 1), 0);
        }

        ShadowTree tree = builder.Build();
        for (int i = 0; i < 4000; i++)
        {
            Point3 aim = new Point3(0.1, 0.2, 10) + (i / 4100.0 * (Rim(i) - new Point3(0.1, 0.2, 10)));
            Point3 from = new(3, -4, 0);
            Assert.True(tree.Blocks(from, from + (2 * (aim - from))), $"ray {i}");
        }
    }

    [Fact]
    public void Rays_along_the_axes_meet_boxes_as_others_do()
    {
        ShadowTree tree = new WallSet().Box(new(1, 1, 1), new(2, 2, 2)).Tree();
        Assert.True(tree.Blocks(new(1.5, 1.4, 0), new(1.5, 1.4, 5)));
        Assert.True(tree.Blocks(new(0, 1.5, 1.4), new(9, 1.5, 1.4)));
        Assert.False(tree.Blocks(new(0, 2.5, 1.5), new(9, 2.5, 1.5)));
        Assert.False(tree.Blocks(new(1.5, 1.5, 3), new(1.5, 1.5, 9)));
        Assert.False(ShadowTree.Empty.Blocks(new(0, 0, 0), new(1, 1, 1)));
    }

    // Signed volumes: not the way of the tree.
    private static (double Nearest, int Which) FirstOf(List<(Point3 A, Point3 B, Point3 C)> triangles, Point3 from, Point3 along)
    {
        (double nearest, int which) = (double.PositiveInfinity, -1);
        Point3 far = from + (1000 * along);
        double Volume(Point3 a, Point3 b, Point3 c, Point3 d) => Point3.Dot(Point3.Cross(b - a, c - a), d - a);
        for (int i = 0; i < triangles.Count; i++)
        {
            (Point3 a, Point3 b, Point3 c) = triangles[i];
            double first = Volume(from, far, a, b);
            double second = Volume(from, far, b, c);
            double third = Volume(from, far, c, a);
            if (!((first > 0 && second > 0 && third > 0) || (first < 0 && second < 0 && third < 0)))
            {
                continue;
            }

            double start = Volume(a, b, c, from);
            double end = Volume(a, b, c, from + along);
            double t = start / (start - end);
            if (t > 0 && t < nearest)
            {
                (nearest, which) = (t, i);
            }
        }

        return (nearest, which);
    }
}
