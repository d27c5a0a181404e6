using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Testing;

namespace ShellForge.Geometry.Tests.Measuring;

public class DistanceQueryTests
{
    private const double Rounding = 1e-9;

    [Property(MaxTest = 150)]
    public Property The_closest_point_is_as_near_as_any_triangle_and_lies_where_it_says() =>
        Prop.ForAll(Gen.Zip(RandomSolids.Mesh, RandomSolids.Point(14)).ToArbitrary(), pair =>
        {
            (Mesh mesh, Point3 p) = pair;
            SurfacePlace place = ClosestPoint.On(new SurfaceTree(mesh), p)!.Value;
            var on = BruteForce.Triangles(mesh).ElementAt(place.Triangle);
            return Math.Abs(place.Distance - BruteForce.Distance(mesh, p)) < Rounding
                && Math.Abs(Point3.Distance(place.At, p) - place.Distance) < Rounding
                && BruteForce.Distance(on.A, on.B, on.C, place.At) < Rounding;
        });

    [Property(MaxTest = 150)]
    public Property Within_a_reach_it_finds_the_same_or_nothing() =>
        Prop.ForAll(Triple(RandomSolids.Mesh, RandomSolids.Point(14), Gen.Choose(0, 60)).ToArbitrary(), draw =>
        {
            (Mesh mesh, Point3 p, int tenths) = draw;
            var tree = new SurfaceTree(mesh);
            SurfacePlace place = ClosestPoint.On(tree, p)!.Value;
            SurfacePlace? within = ClosestPoint.On(tree, p, tenths / 10.0);
            return place.Distance > tenths / 10.0 ? within is null : within?.Distance == place.Distance;
        });

    [Property(MaxTest = 200)]
    public Property Membership_agrees_with_the_solid_angle() =>
        Prop.ForAll(Gen.Zip(RandomSolids.Mesh, RandomSolids.Point(14)).ToArbitrary(), pair =>
        {
            (Mesh mesh, Point3 p) = pair;
            Membership found = PointMembership.Of(new SurfaceTree(mesh), p);
            double distance = BruteForce.Distance(mesh, p);
            return distance < Rounding ? found == Membership.OnSurface || distance > 0
                : found == (BruteForce.IsInside(mesh, p) ? Membership.Inside : Membership.Outside);
        });

    [Property(MaxTest = 60)]
    public Property Corners_and_middles_of_sides_lie_on_the_surface() =>
        Prop.ForAll(RandomSolids.Mesh.ToArbitrary(), mesh =>
        {
            var tree = new SurfaceTree(mesh);
            return BruteForce.Triangles(mesh).All(t =>
                PointMembership.Of(tree, t.A) == Membership.OnSurface
                    && PointMembership.Of(tree, 0.5 * (t.A + t.B)) == Membership.OnSurface);
        });

    [Property(MaxTest = 20)]
    public Property The_gap_of_two_solids_is_that_of_their_nearest_triangles() =>
        Prop.ForAll(Gen.Zip(RandomSolids.Mesh, RandomSolids.Mesh).ToArbitrary(), pair =>
        {
            (Mesh first, Mesh second) = pair;
            Gap gap = Clearance.Between(new SurfaceTree(first), new SurfaceTree(second))!.Value;
            return Math.Abs(gap.Distance - BruteForce.Distance(first, second)) < 1e-7
                && Math.Abs(Point3.Distance(gap.OnFirst, gap.OnSecond) - gap.Distance) < Rounding
                && BruteForce.Distance(first, gap.OnFirst) < Rounding && BruteForce.Distance(second, gap.OnSecond) < Rounding;
        });

    [Property(MaxTest = 60)]
    public Property The_signed_gap_is_negative_when_the_solids_have_room_in_common() =>
        Prop.ForAll(Gen.Zip(RandomSolids.Mesh, RandomSolids.Mesh).ToArbitrary(), pair =>
        {
            (Mesh first, Mesh second) = pair;
            double sampled = Math.Max(SampledDepth(first, second), SampledDepth(second, first));
            Gap gap = Clearance.SignedGap(new SurfaceTree(first), new SurfaceTree(second), tolerance: 0.01)!.Value;

            // No sampled place may be deeper; the place told must be as deep as told.
            bool deepEnough = -gap.Distance >= sampled - 0.01 - Rounding;
            bool isThere = gap.Distance >= 0 || (Math.Abs(Point3.Distance(gap.OnFirst, gap.OnSecond) + gap.Distance) < Rounding
                && BruteForce.Distance(first, gap.OnFirst) < Rounding && BruteForce.Distance(second, gap.OnSecond) < Rounding);
            return deepEnough && isThere && (sampled <= 0.01 || gap.Distance < 0);
        });

    [Fact]
    public void A_peg_that_went_two_into_a_wall_is_two_deep()
    {
        Mesh wall = Meshes.Of(Shapes.Box(new Point3(0, -20, -20), new Point3(30, 20, 20)));
        Mesh peg = Meshes.Of(Shapes.Box(new Point3(-10, -2, -3), new Point3(2, 2, 3)));
        Gap gap = Clearance.SignedGap(new SurfaceTree(peg), new SurfaceTree(wall))!.Value;
        Assert.Equal(-2, gap.Distance, Penetration.DefaultTolerance);
        Assert.Equal(0, gap.OnSecond.X, 3);
    }

    [Fact]
    public void A_body_within_another_is_as_deep_as_its_farthest_place()
    {
        var outer = new SurfaceTree(Meshes.Of(Shapes.Box(new Point3(-10, -10, -10), new Point3(10, 10, 10))));
        var inner = new SurfaceTree(Meshes.Of(Shapes.Box(new Point3(3, -1, -1), new Point3(5, 1, 1))));
        Assert.Equal(-7, Clearance.SignedGap(outer, inner)!.Value.Distance, Penetration.DefaultTolerance);
        Assert.Equal(-7, Clearance.SignedGap(inner, outer, reach: 1)!.Value.Distance, Penetration.DefaultTolerance);
    }

    [Fact]
    public void Faces_that_touch_have_no_gap_and_no_depth()
    {
        var left = new SurfaceTree(Meshes.Of(Shapes.Box(new Point3(-5, 0, 0), new Point3(0, 5, 5))));
        var right = new SurfaceTree(Meshes.Of(Shapes.Box(new Point3(0, 1, 1), new Point3(4, 9, 9))));
        Assert.Equal(0, Clearance.SignedGap(left, right)!.Value.Distance);
    }

    [Property(MaxTest = 40)]
    public Property Moving_a_tree_moves_its_answers() =>
        Prop.ForAll(Triple(RandomSolids.Mesh, RandomSolids.Point(9), RandomSolids.Point(14)).ToArbitrary(), draw =>
        {
            (Mesh mesh, Point3 by, Point3 p) = draw;
            Transform3 map = Transform3.TurnX(Angle.FromDegrees(17)).Then(Transform3.Shift(by.X, by.Y, by.Z));
            var tree = new SurfaceTree(mesh);
            double still = ClosestPoint.On(tree, p)!.Value.Distance;
            return Math.Abs(ClosestPoint.On(tree.Moved(map), map.Apply(p))!.Value.Distance - still) < Rounding;
        });

    [Fact]
    public void An_empty_surface_has_no_answer()
    {
        var none = new SurfaceTree(Mesh.Empty);
        Assert.Null(ClosestPoint.On(none, default));
        Assert.Null(Clearance.Between(none, none));
        Assert.Null(Clearance.SignedGap(none, new SurfaceTree(Meshes.Of(Shapes.Box(default, new Point3(1, 1, 1))))));
        Assert.Equal(Membership.Outside, PointMembership.Of(none, default));
        Assert.Null(RayCast.First(none, default, new Point3(0, 0, 1)));
    }

    // The deepest of many places on one surface that lie inside the other.
    private static double SampledDepth(Mesh mover, Mesh solid)
    {
        double deepest = double.NegativeInfinity;
        foreach ((Point3 a, Point3 b, Point3 c) in BruteForce.Triangles(mover))
        {
            foreach ((double u, double v) in new[] { (0.0, 0.0), (0.333, 0.333), (0.5, 0.0), (0.05, 0.9), (0.5, 0.5) })
            {
                Point3 p = a + (u * (b - a)) + (v * (c - a));
                double distance = BruteForce.Distance(solid, p);
                deepest = Math.Max(deepest, distance > 1e-6 && BruteForce.IsInside(solid, p) ? distance : -distance);
            }
        }

        return deepest;
    }

    private static Gen<(TA, TB, TC)> Triple<TA, TB, TC>(Gen<TA> first, Gen<TB> second, Gen<TC> third) =>
        from a in first
        from b in second
        from c in third
        select (a, b, c);
}
