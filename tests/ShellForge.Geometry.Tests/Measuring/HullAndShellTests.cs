using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ShellForge.Geometry.Auditing;
using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Testing;

namespace ShellForge.Geometry.Tests.Measuring;

public class HullAndShellTests
{
    // Small coordinates make many points in one plane and on one line; large ones make thin tetrahedra.
    private static Gen<LatticePoint3[]> Points =>
        from reach in Gen.Elements(1, 2, 3, 1000, Lattice.Limit)
        from count in Gen.Choose(4, 40)
        from points in (from x in Gen.Choose(-reach, reach)
                        from y in Gen.Choose(-reach, reach)
                        from z in Gen.Choose(-reach,
            reach)
                        select new LatticePoint3(x, y, z)).ArrayOf(count)
        select points;

    [Property(MaxTest = 300)]
    public Property A_hull_bounds_a_solid_is_convex_and_holds_every_point() =>
        Prop.ForAll(Points.ToArbitrary(), points =>
        {
            Mesh hull = ConvexHull.Of(points);
            bool flat = points.All(p => points.All(q => points.All(r => Flat(points[0], p, q, r))));
            if (hull.TriangleCount == 0)
            {
                return flat;
            }

            bool holdsAll = Enumerable.Range(0, hull.TriangleCount).All(t => points.All(p => Height(hull, t, p).Sign <= 0));
            return !flat && holdsAll && hull.Vertices.All(points.Contains)
                && MeshAudit.Run(hull).Count(MeshFaultKind.DegenerateTriangle) == 0
                && Measure.Genus(hull) == 0 && Measure.Volume(hull) > 0 && MeshAudit.Run(hull).IsClean;
        });

    [Property(MaxTest = 40)]
    public Property The_hull_of_a_solid_is_no_smaller_and_equal_for_convex_ones() =>
        Prop.ForAll(RandomSolids.Mesh.ToArbitrary(), mesh => Measure.Volume(ConvexHull.Of(mesh)) >= Measure.Volume(mesh) * (1 - 1e-12));

    [Fact]
    public void The_hull_of_a_box_is_the_box()
    {
        Mesh box = Meshes.Of(Shapes.Box(new Point3(-1, -2, -3), new Point3(4, 5, 6)));
        Mesh hull = ConvexHull.Of(box);
        Assert.Equal(12, hull.TriangleCount);
        Assert.Equal(Measure.Volume(box), Measure.Volume(hull));
    }

    [Fact]
    public void Points_in_a_plane_have_no_hull() =>
        Assert.Equal(0, ConvexHull.Of([new(0, 0, 0), new(9, 0, 3), new(0, 9, 3), new(9, 9, 6), new(3, 3, 2)]).TriangleCount);

    [Fact]
    public void Bodies_take_their_own_voids_along()
    {
        Solid first = Shapes.Box(new Point3(0, 0, 0), new Point3(10, 10, 10)).Less(Shapes.Box(new Point3(1, 1, 1), new Point3(9, 9, 9)));
        Solid within = Shapes.Box(new Point3(3, 3, 3), new Point3(7, 7, 7)).Less(Shapes.Box(new Point3(4, 4, 4), new Point3(5, 5, 5)));
        Solid beside = Shapes.Box(new Point3(20, 0, 0), new Point3(22, 1, 1));
        SolidMesh all = SolidEvaluator.Evaluate(first.And(within, beside)).Require();
        Assert.Equal(5, ShellSplit.Shells(all.Mesh).Length);
        var bodies = ShellSplit.Bodies(all);
        Assert.Equal([2, 64 - 1, 1000 - 512], bodies.Select(b => Math.Round(Measure.Volume(b.Mesh), 6)).Order());
        Assert.All(bodies, body => Assert.True(MeshAudit.Run(body.Mesh).IsClean));
    }

    [Fact]
    public void Crumbs_and_tiny_voids_go_and_all_else_stays_to_the_bit()
    {
        Solid body = Shapes.Box(new Point3(0, 0, 0), new Point3(10, 10, 10));
        Solid pore = Shapes.Box(new Point3(3, 3, 3), new Point3(3.2, 3.2, 3.2));
        Solid room = Shapes.Box(new Point3(5, 5, 5), new Point3(6, 6, 6));
        Solid crumb = Shapes.Box(new Point3(20, 0, 0), new Point3(20.3, 0.3, 0.3));
        Solid small = Shapes.Box(new Point3(30, 0, 0), new Point3(31, 0.5, 0.5));
        SolidMesh whole = SolidEvaluator.Evaluate(body.Less(room).And(small)).Require();
        SolidMesh crumbled = SolidEvaluator.Evaluate(body.Less(pore, room).And(crumb, small)).Require();
        Assert.Same(whole, ShellSplit.WithoutCrumbs(whole, 0.05, 0.05));
        SolidMesh clean = ShellSplit.WithoutCrumbs(crumbled, 0.05, 0.05);
        Assert.Equal(5, Measure.Shells(crumbled.Mesh));
        Assert.Equal(3, Measure.Shells(clean.Mesh));
        Assert.Equal(Measure.Volume(whole.Mesh), Measure.Volume(clean.Mesh));
        Assert.True(MeshAudit.Run(clean.Mesh).IsClean);

        SolidMesh filled = ShellSplit.WithoutCrumbs(crumbled, 0.05, 2);
        Assert.Equal(2, Measure.Shells(filled.Mesh));
        Assert.Equal(1000.25, Measure.Volume(filled.Mesh), 9);
        Assert.True(MeshAudit.Run(filled.Mesh).IsClean);
    }

    [Fact]
    public void A_solid_of_nothing_but_crumbs_stays_what_it_is()
    {
        Solid one = Shapes.Box(new Point3(0, 0, 0), new Point3(0.2, 0.2, 0.2));
        SolidMesh crumbs = SolidEvaluator.Evaluate(one.And(Shapes.Box(new Point3(1, 0, 0), new Point3(1.2, 0.2, 0.2)))).Require();
        Assert.Same(crumbs, ShellSplit.WithoutCrumbs(crumbs, 0.05, 0.05));
    }

    [Property(MaxTest = 40)]
    public Property Shells_together_are_the_mesh() =>
        Prop.ForAll(RandomSolids.Mesh.ToArbitrary(), mesh =>
        {
            var shells = ShellSplit.Shells(mesh);
            return shells.Length == Measure.Shells(mesh) && shells.Sum(s => s.TriangleCount) == mesh.TriangleCount
                && Math.Abs(shells.Sum(Measure.Volume) - Measure.Volume(mesh)) < 1e-6 && shells.All(s => Measure.Shells(s) == 1);
        });

    private static Rational Height(Mesh mesh, int t, LatticePoint3 p)
    {
        RationalPoint a = At(mesh, 3 * t), b = At(mesh, (3 * t) + 1), c = At(mesh, (3 * t) + 2);
        return RationalPoint.Dot(RationalPoint.Cross(b - a, c - a), RationalPoint.From(p) - a);
    }

    private static RationalPoint At(Mesh mesh, int corner) => RationalPoint.From(mesh.Vertices[mesh.Triangles[corner]]);

    private static bool Flat(LatticePoint3 a, LatticePoint3 b, LatticePoint3 c, LatticePoint3 d) =>
        RationalPoint.Dot(
            RationalPoint.Cross(RationalPoint.From(b) - RationalPoint.From(a), RationalPoint.From(c) - RationalPoint.From(a)),
            RationalPoint.From(d) - RationalPoint.From(a)).Sign == 0;
}
