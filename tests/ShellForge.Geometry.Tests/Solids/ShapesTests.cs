using FsCheck.Xunit;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;

namespace ShellForge.Geometry.Tests.Solids;

public sealed class ShapesTests
{
    [Fact]
    public void A_prism_has_the_volume_of_its_base_times_its_height()
    {
        Region plate = Region.Annulus(Ring.Peg(20), Ring.Peg(20).Coaxial(8, RingSide.Outside))
            .Less(Region.Disc(new(14, 0), Ring.Hole(1.6)));
        Assert.Equal(plate.Area * 3, ClosedVolume(Shapes.Extrude(plate, -1, 2)), 1e-8);
    }

    [Fact]
    public void A_frustum_has_the_volume_of_the_formula()
    {
        var lower = new Ring(6, RingSide.Outside, 64, Angle.Zero);
        Ring upper = lower.Coaxial(2, RingSide.Outside);
        double bottom = Region.Disc(Point2.Origin, lower).Area;
        double top = Region.Disc(Point2.Origin, upper).Area;
        double expected = 5.0 / 3 * (bottom + top + Math.Sqrt(bottom * top));
        Assert.Equal(expected, ClosedVolume(Shapes.Taper(lower, 1, upper, 6, new Point2(30, -2))), 0.01);
    }

    [Fact]
    public void A_revolved_outline_that_touches_the_axis_is_closed()
    {
        // A cone on a cylinder, the axis part of the outline; volume of the regular prism and pyramid.
        Solid body = Shapes.Revolve([new(0, 0), new(4, 0), new(4, 3), new(0, 9)], 40, Angle.FromDegrees(2), RingSide.Inside);
        double area = 40 * 16 * Angle.FromDegrees(9).Sin / 2;
        Assert.Equal((area * 3) + (area * 2), ClosedVolume(body), 0.02);
        Solid torus = Shapes.Revolve([new(5, 0), new(7, 1), new(5, 2)], 40, Angle.Zero, RingSide.Inside);
        Assert.Equal(2.0 * (5 + (2.0 / 3)) * 40 * Angle.FromDegrees(9).Sin, ClosedVolume(torus), 0.02);
    }

    [Fact]
    public void A_sphere_and_a_box_are_closed()
    {
        Assert.Equal(4 * Math.PI / 3 * 1000, ClosedVolume(Shapes.Sphere(10, 128)), 6.0);
        Assert.Equal(24, ClosedVolume(Shapes.Box(new(-1, -1, -1), new(1, 2, 3))), 1e-12);
    }

    [Fact]
    public void A_body_through_several_outlines_is_those_between_two_of_them_on_each_other()
    {
        static IReadOnlyList<Point2> Square(double half) => [new(-half, -half), new(half, -half), new(half, half), new(-half, half)];
        Solid body = Shapes.Loft([(Square(5), 0), (Square(8), 2), (Square(9), 3), (Square(9), 7)]);

        // Frustums of pyramids: height x (a + b + sqrt(a b)) / 3.
        double expected = (2 * (100 + 256 + 160) / 3.0) + ((256 + 324 + 288) / 3.0) + (4 * 324);
        Assert.Equal(expected, ClosedVolume(body), 1e-9);
        Assert.Throws<ArgumentException>(() => Shapes.Loft([(Square(5), 0)]));
        Assert.Throws<ArgumentException>(() => Shapes.Loft([(Square(5), 0), (Square(6), 2), (Square(7), 2)]));
        Assert.Throws<ArgumentException>(() => Shapes.Loft([(Square(5), 0), (Square(6), 1), ([new(0, 0), new(1, 0), new(0, 1)], 2)]));
    }

    [Property(MaxTest = 50)]
    public void Triangles_of_one_sheet_lie_in_one_plane(byte radius, byte top, short phase)
    {
        var lower = new Ring(1 + (radius / 4.0), RingSide.Outside, 36, Angle.FromDegrees(phase / 3.0));
        var solid = (SourceSolid)Shapes.Taper(lower, 0, lower.Coaxial(0.5 + (top / 5.0), RingSide.Inside), 7, Point2.Origin);
        foreach (IGrouping<int, int> sheet in Enumerable.Range(0, solid.Sheets.Length).GroupBy(t => solid.Sheets[t]))
        {
            Point3[] corners = [.. sheet.SelectMany(t => Enumerable.Range(0, 3).Select(k => solid.Vertices[solid.Triangles[(3 * t) + k]]))];
            Point3 normal = Point3.Cross(corners[1] - corners[0], corners[2] - corners[0]);
            Assert.All(corners, c => Assert.True(
                Math.Abs(Point3.Dot(c - corners[0], normal)) / normal.Length <= 8 * Lattice.Step));
        }

        // 36 flat sides and 2 caps; sides come apart only where the rounding warps them.
        Assert.InRange(solid.Sheets.Distinct().Count(), 38, 38 + 36);
    }

    [Fact]
    public void Nonsense_is_refused()
    {
        Region square = Region.Rectangle(new(0, 0), new(1, 1));
        Assert.Throws<ArgumentException>(() => Shapes.Extrude(square, 2, 2));
        Assert.Throws<ArgumentException>(
            () => Shapes.Loft([new(0, 0), new(1, 0), new(0, 1)], 0, [new(0, 0), new(1, 0), new(1, 1), new(0, 1)], 1));
        Assert.Throws<ArgumentException>(() => Shapes.Loft([new(0, 0), new(0, 1), new(1, 0)], 0, [new(0, 0), new(0, 1), new(1, 0)], 1));
        Assert.Throws<ArgumentException>(() => Shapes.Taper(Ring.Peg(3), 0, Ring.Peg(300 / 4.0), 1, Point2.Origin));
        Assert.Throws<ArgumentOutOfRangeException>(
            () => Shapes.Revolve([new(-1, 0), new(1, 0), new(0, 1)], 32, Angle.Zero, RingSide.Inside));
        Assert.Same(Solid.Empty, Shapes.Extrude(Region.Empty, 0, 1));
    }

    // Volume by the divergence theorem, after a look that every edge is used once each way.
    private static double ClosedVolume(Solid solid)
    {
        var source = Assert.IsType<SourceSolid>(solid);
        HashSet<(int, int)> edges = [];
        double six = 0;
        for (int i = 0; i < source.Triangles.Length; i += 3)
        {
            int[] t = [source.Triangles[i], source.Triangles[i + 1], source.Triangles[i + 2]];
            for (int k = 0; k < 3; k++)
            {
                Assert.True(edges.Add((t[k], t[(k + 1) % 3])));
            }

            six += Point3.Dot(source.Vertices[t[0]], Point3.Cross(source.Vertices[t[1]], source.Vertices[t[2]]));
        }

        Assert.All(edges, e => Assert.Contains((e.Item2, e.Item1), edges));
        Assert.Equal(source.Triangles.Length / 3, source.Sheets.Length);
        return six / 6;
    }
}
