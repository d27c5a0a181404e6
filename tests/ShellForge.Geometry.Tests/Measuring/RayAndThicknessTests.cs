using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Testing;

namespace ShellForge.Geometry.Tests.Measuring;

public class RayAndThicknessTests
{
    [Property(MaxTest = 200)]
    public Property A_ray_stops_at_the_first_triangle_that_any_formula_finds() =>
        Prop.ForAll(Triple(RandomSolids.Mesh, RandomSolids.Point(14), RandomSolids.Point(3)).ToArbitrary(), draw =>
        {
            (Mesh mesh, Point3 start, Point3 direction) = draw;
            if (direction.Length == 0)
            {
                return true;
            }

            direction = (1 / direction.Length) * direction;
            SurfacePlace? hit = RayCast.First(new SurfaceTree(mesh), start, direction);
            (double distance, bool grazing) = FirstByPlanes(mesh, start, direction);
            return grazing || (hit is null ? double.IsInfinity(distance) : Math.Abs(hit.Value.Distance - distance) < 1e-7);
        });

    [Property(MaxTest = 100)]
    public Property Rays_at_corners_and_edges_never_slip_through() =>
        Prop.ForAll(Gen.Zip(RandomSolids.Mesh, RandomSolids.Point(14)).ToArbitrary(), pair =>
        {
            // A ray to a place all of whose faces look at its start meets something there at the latest.
            (Mesh mesh, Point3 start) = pair;
            var tree = new SurfaceTree(mesh);
            return BruteForce.Triangles(mesh).All(t => new[] { t.A, 0.5 * (t.A + t.B) }.All(target =>
                !AllFacesThereLookAt(mesh, start, target)
                    || (RayCast.First(tree, start, target - start) is { } hit && hit.Distance <= Point3.Distance(start, target) + 1e-9)));
        });

    [Property(MaxTest = 100)]
    public Property From_inside_a_ray_leaves_and_from_outside_it_enters_first() =>
        Prop.ForAll(Triple(RandomSolids.Mesh, RandomSolids.Point(12), RandomSolids.Point(3)).ToArbitrary(), draw =>
        {
            (Mesh mesh, Point3 start, Point3 direction) = draw;
            var tree = new SurfaceTree(mesh);
            Membership at = PointMembership.Of(tree, start);
            if (direction.Length == 0 || at == Membership.OnSurface)
            {
                return true;
            }

            double leaving = RayCast.First(tree, start, direction, RayFaces.Leaving)?.Distance ?? double.PositiveInfinity;
            double entering = RayCast.First(tree, start, direction, RayFaces.Entering)?.Distance ?? double.PositiveInfinity;
            double any = RayCast.First(tree, start, direction)?.Distance ?? double.PositiveInfinity;
            return any == Math.Min(leaving, entering)
                && (at == Membership.Inside ? leaving <= entering && !double.IsInfinity(leaving) : entering <= leaving);
        });

    [Theory]
    [InlineData(0.4)]
    [InlineData(1.2)]
    [InlineData(7.5)]
    public void A_plate_is_as_thick_as_it_is_by_both_methods(double height)
    {
        var plate = new SurfaceTree(Meshes.Of(Shapes.Box(new Point3(-30, -30, 0), new Point3(30, 30, height))));
        for (int t = 0; t < plate.Mesh.TriangleCount; t++)
        {
            if (Math.Abs(Normal(plate.Mesh, t).Z) > 0.5)
            {
                Point3 middle = Middle(plate.Mesh, t);
                Assert.Equal(height, Thickness.AlongRay(plate, t, middle)!.Value.Thickness, 4);
                Assert.Equal(height, Thickness.InSphere(plate, t, middle)!.Value.Thickness, 4);
            }
        }

        Assert.Equal(height, Thickness.Thinnest(plate, 2, 20, Angle.FromDegrees(30))!.Value.Thickness, 4);
    }

    // Along rays a faceted ball reads its diameter; a sphere tangent to a facet is held by the neighbours as well, so it may read less.
    [Fact]
    public void A_ball_is_as_thick_as_its_diameter_everywhere()
    {
        var ball = new SurfaceTree(Meshes.Of(Shapes.Sphere(10, 96)));
        for (int t = 0; t < ball.Mesh.TriangleCount; t += 7)
        {
            Assert.Equal(20, Thickness.AlongRay(ball, t, Middle(ball.Mesh, t))!.Value.Thickness, 0.1);
            Assert.InRange(Thickness.InSphere(ball, t, Middle(ball.Mesh, t))!.Value.Thickness, 1, 20.01);
        }
    }

    [Theory]
    [InlineData(20, 18.74)]
    [InlineData(45, 43.33)]
    public void A_tube_is_as_thick_as_its_wall(double outer, double inner)
    {
        int count = Ring.CountFor(outer);
        var tube = new SurfaceTree(Meshes.Of(Shapes.Extrude(
            Geometry.Planar.Region.Annulus(new Ring(outer, RingSide.Outside, count, Angle.Zero),
                new Ring(inner, RingSide.Outside, count, Angle.Zero)), 0, 30)));
        ThicknessReading thin = Thickness.Thinnest(tube, 2, 5, Angle.FromDegrees(30))!.Value;
        Assert.Equal((outer - inner), thin.Thickness, 0.01);
        Assert.Equal(thin.Thickness, Point3.Distance(thin.At, thin.Opposite), 9);
    }

    // In a wedge the ball that touches one face at a distance x from the edge has the radius x tan(half the angle).
    [Theory]
    [InlineData(30)]
    [InlineData(60)]
    public void In_a_wedge_the_sphere_grows_from_the_edge(double degrees)
    {
        double rise = 40 * Math.Tan(degrees * Math.PI / 180);
        Mesh wedge =
            Meshes.Of(Shapes.Extrude(Geometry.Planar.Region.Polygon([new Point2(0, 0), new Point2(40, 0), new Point2(40, rise)]), -20, 20));
        var tree = new SurfaceTree(wedge);
        int floor = Enumerable.Range(0, wedge.TriangleCount).First(t => Normal(wedge, t).Y < -0.9);
        foreach (double x in new[] { 2.0, 5, 9 })
        {
            double radius = x * Math.Tan(degrees * Math.PI / 360);
            Assert.Equal(2 * radius, Thickness.InSphere(tree, floor, new Point3(x, 0, 0))!.Value.Thickness, 4);
            Assert.Equal(x * Math.Tan(degrees * Math.PI / 180), Thickness.AlongRay(tree, floor, new Point3(x, 0, 0))!.Value.Thickness, 4);
        }
    }

    [Property(MaxTest = 60)]
    public Property The_sphere_is_the_largest_that_fits() =>
        Prop.ForAll(Gen.Zip(RandomSolids.Mesh, Gen.Choose(0, 9999)).ToArbitrary(), pair =>
        {
            (Mesh mesh, int number) = pair;
            int t = number % mesh.TriangleCount;
            Point3 at = Middle(mesh, t);
            Point3 inward = -1 * Normal(mesh, t);
            double told = Thickness.InSphere(new SurfaceTree(mesh), t, at)!.Value.Thickness / 2;

            // Halving on the radius against every triangle: the ball touches at the place, so it fits when nothing is nearer.
            double low = 0;
            double high = 40;
            for (int i = 0; i < 60; i++)
            {
                double radius = (low + high) / 2;
                bool fits = BruteForce.Distance(mesh, at + (radius * inward)) >= radius * (1 - 1e-9);
                (low, high) = fits ? (radius, high) : (low, radius);
            }

            return Math.Abs(told - low) < 1e-4;
        });

    [Fact]
    public void The_thinnest_place_of_a_cup_is_its_floor_and_is_told_where()
    {
        Mesh cup = SolidEvaluator.Evaluate(Shapes.Box(new Point3(-20, -20, 0), new Point3(20, 20, 15)).Less(
            Shapes.Box(new Point3(-18, -18, 1.5), new Point3(18, 18, 20)), Shapes.Box(new Point3(5, 5, 0.6), new Point3(9, 9, 3))))
                .Require().Mesh;
        ThicknessReading thin = Thickness.Thinnest(new SurfaceTree(cup), 1, 10, Angle.FromDegrees(30))!.Value;
        Assert.Equal(0.6, thin.Thickness, 4);
        Assert.InRange(thin.At.X, 5, 9);
        Assert.InRange(thin.At.Y, 5, 9);
    }

    [Fact]
    public void A_ray_without_a_direction_is_refused() =>
        Assert.Throws<ArgumentException>(() => RayCast.First(new SurfaceTree(Mesh.Empty), default, default));

    private static Point3 Middle(Mesh mesh, int t)
    {
        var (a, b, c) = BruteForce.Triangles(mesh).ElementAt(t);
        return (1.0 / 3) * (a + b + c);
    }

    private static Point3 Normal(Mesh mesh, int t)
    {
        var (a, b, c) = BruteForce.Triangles(mesh).ElementAt(t);
        Point3 n = Point3.Cross(b - a, c - a);
        return (1 / n.Length) * n;
    }

    // Plane by plane: the crossing, if it is nearer to the triangle than rounding. Rays along a face or through an edge of the
    // outline are left to the test of edges.
    private static (double Distance, bool Grazing) FirstByPlanes(Mesh mesh, Point3 start, Point3 direction)
    {
        double best = double.PositiveInfinity;
        bool grazing = false;
        foreach ((Point3 a, Point3 b, Point3 c) in BruteForce.Triangles(mesh))
        {
            Point3 n = Point3.Cross(b - a, c - a);
            n = (1 / n.Length) * n;
            double slope = Point3.Dot(n, direction);
            if (Math.Abs(slope) < 1e-6)
            {
                grazing |= Math.Abs(Point3.Dot(n, a - start)) < 1e-3;
                continue;
            }

            double distance = Point3.Dot(n, a - start) / slope;
            Point3 at = start + (distance * direction);
            double off = BruteForce.Distance(a, b, c, at);
            double fromSides = Math.Min(BruteForce.ToSegment(a, b, at),
                Math.Min(BruteForce.ToSegment(b, c, at), BruteForce.ToSegment(c, a, at)));
            grazing |= fromSides < 1e-6 || Math.Abs(distance) < 1e-6;
            if (distance >= 0 && off < 1e-9)
            {
                best = Math.Min(best, distance);
            }
        }

        return (best, grazing);
    }

    private static bool AllFacesThereLookAt(Mesh mesh, Point3 start, Point3 target) => BruteForce.Triangles(mesh)
        .Where(t => BruteForce.Distance(t.A, t.B, t.C, target) < 1e-6)
        .All(t => Point3.Dot(Point3.Cross(t.B - t.A, t.C - t.A), start - t.A) > 1e-3);

    private static Gen<(TA, TB, TC)> Triple<TA, TB, TC>(Gen<TA> first, Gen<TB> second, Gen<TC> third) =>
        from a in first
        from b in second
        from c in third
        select (a, b, c);
}
