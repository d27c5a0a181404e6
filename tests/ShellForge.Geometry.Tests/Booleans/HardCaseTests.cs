using ShellForge.Geometry.Auditing;
using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Booleans.Settling;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using Region = ShellForge.Geometry.Planar.Region;

namespace ShellForge.Geometry.Tests.Booleans;

public class HardCaseTests
{
    private static readonly Solid Cube = Shapes.Box(new Point3(0, 0, 0), new Point3(4, 4, 4));

    [Theory]
    [InlineData(1e-3)]
    [InlineData(1e-4)]
    [InlineData(1e-5)]
    [InlineData(3e-6)]
    [InlineData(1e-6)]
    [InlineData(1e-7)]
    [InlineData(1e-8)]
    public void A_sphere_and_itself_turned_by_next_to_nothing_unite_and_cut_cleanly(double radians)
    {
        Solid sphere = Shapes.Sphere(10, 32);
        Solid turned = sphere.Moved(Transform3.TurnZ(Angle.FromRadians(radians)).Then(Transform3.TurnX(Angle.FromRadians(radians))));
        double alone = Measure.Volume(Clean(sphere).Mesh);

        Assert.InRange(Measure.Volume(Clean(sphere.And(turned)).Mesh), alone * (1 - 1e-6), alone * (1 + (2 * radians) + 1e-5));
        Clean(sphere.Less(turned));
    }

    [Fact]
    public void A_notch_of_a_step_leaves_no_needles()
    {
        double deep = 4 - Lattice.Step;
        Solid notched = Cube.Less(Shapes.Box(new Point3(deep, 1, -1), new Point3(5, 3, 5)),
            Shapes.Box(new Point3(1, deep, 1), new Point3(3, 5, 3)));

        Mesh mesh = Clean(notched).Mesh;

        Assert.InRange(SmallestAltitude(mesh), 2, double.PositiveInfinity);
        Assert.InRange(Measure.Volume(mesh) - 64, -Measure.Area(mesh) / (1 << 17), Measure.Area(mesh) / (1 << 17));
    }

    [Fact]
    public void A_film_of_a_step_stays_a_film()
    {
        Solid film = Cube.Less(Shapes.Box(new Point3(-1, -1, Lattice.Step), new Point3(5, 5, 5)));
        Solid sheet = Cube.Less(Shapes.Box(new Point3(-1, -1, 2 + Lattice.Step), new Point3(5, 5, 5)),
            Shapes.Box(new Point3(-1, -1, -1), new Point3(5, 5, 2)));

        Assert.Equal(16 * Lattice.Step, Measure.Volume(Clean(film).Mesh), 1e-12);
        Assert.Equal(16 * Lattice.Step, Measure.Volume(Clean(sheet).Mesh), 1e-12);
    }

    [Theory]
    [InlineData(64, 64)]
    [InlineData(64, 48)]
    public void Turned_coaxial_cylinder_and_cone_share_a_rim(int lowerCount, int upperCount)
    {
        Ring rim = new(3, RingSide.Inside, lowerCount, Angle.Zero), other = new(3, RingSide.Inside, upperCount, Angle.Zero);
        Solid shaft = Shapes.Taper(rim, 0, rim, 5, Point2.Origin);
        Solid head = Shapes.Taper(other, 5, new Ring(1, RingSide.Inside, upperCount, Angle.Zero), 7, Point2.Origin);
        Transform3 tilt = Transform3.TurnX(Angle.FromDegrees(31)).Then(Transform3.TurnZ(Angle.FromDegrees(17)));

        SolidMesh whole = Clean(shaft.And(head).Moved(tilt));

        Assert.Equal(1, Measure.Shells(whole.Mesh));
        double straight = Measure.Volume(Clean(shaft.And(head)).Mesh);
        Assert.InRange(Measure.Volume(whole.Mesh) - straight, -1e-3, 1e-3);
    }

    [Theory]
    [InlineData(-2)]
    [InlineData(-1)]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void A_bead_grazes_a_wall(int steps)
    {
        Ring outer = new(10, RingSide.Inside, 64, Angle.Zero), inner = new(9, RingSide.Inside, 64, Angle.Zero);
        Solid wall = Shapes.Taper(outer, 0, outer, 6, Point2.Origin).Less(Shapes.Taper(inner, -1, inner, 7, Point2.Origin));
        double root = 9 + (steps * Lattice.Step);
        Solid bead = Shapes.Revolve(
            [new(root - 0.5, 3), new(root, 2.5), new(root, 3.5)], 64, Angle.Zero, RingSide.Inside);

        Clean(wall.And(bead));
        Clean(wall.Less(bead));
    }

    [Fact]
    public void A_cube_that_stands_with_an_edge_on_a_face_is_opened_there()
    {
        Solid prism = Shapes.Extrude(Region.Polygon([new(2, 4), new(3, 5), new(2, 6), new(1, 5)]), 1, 3);

        SolidOutcome outcome = SolidEvaluator.Evaluate(Cube.And(prism));

        AssertClean(outcome);
        Assert.Contains(outcome.Openings, o => o.Kind == ContactKind.Edge && Point3.Distance(o.Place, new Point3(2, 4, 2)) < 0.01);
        Assert.All(outcome.Openings, o => Assert.InRange(o.Distance, 0, 0.002));
        Assert.Equal(2, Measure.Shells(outcome.Solid!.Mesh));
    }

    [Fact]
    public void Two_cubes_that_share_a_vertex_or_an_edge_come_apart()
    {
        Solid corner = Cube.Moved(Transform3.Shift(4, 4, 4)), edge = Cube.Moved(Transform3.Shift(4, 4, 0));
        SolidOutcome atCorner = SolidEvaluator.Evaluate(Cube.And(corner));
        SolidOutcome alongEdge = SolidEvaluator.Evaluate(Cube.And(edge));

        AssertClean(atCorner);
        AssertClean(alongEdge);
        Assert.Equal(ContactKind.Vertex, Assert.Single(atCorner.Openings).Kind);
        Assert.Equal(ContactKind.Edge, Assert.Single(alongEdge.Openings).Kind);
        Assert.Equal(2, Measure.Shells(alongEdge.Solid!.Mesh));
    }

    [Fact]
    public void Voids_that_touch_along_an_edge_stay_a_manifold()
    {
        Solid block = Shapes.Box(new Point3(-2, -2, -2), new Point3(10, 10, 6));

        SolidOutcome outcome = SolidEvaluator.Evaluate(block.Less(Cube, Cube.Moved(Transform3.Shift(4, 4, 0))));

        AssertClean(outcome);
        Assert.NotEmpty(outcome.Openings);
    }

    [Fact]
    public void Twelve_cones_meet_in_one_point()
    {
        List<Solid> cones = [];
        for (int i = 0; i < 12; i++)
        {
            Solid cone = Shapes.Revolve([new(0, 0), new(0.5, 4), new(0, 4)], 16, Angle.Zero, RingSide.Inside);
            cones.Add(cone.Moved(Transform3.TurnX(Angle.FromDegrees(90)).Then(Transform3.TurnZ(Angle.FromDegrees(30 * i)))));
        }

        SolidOutcome outcome = SolidEvaluator.Evaluate(Solid.Union(cones));

        AssertClean(outcome);
        Assert.Equal(12, Measure.Shells(outcome.Solid!.Mesh));
    }

    [Theory]
    [InlineData(3)]
    [InlineData(8)]
    [InlineData(23)]
    [InlineData(64)]
    public void Many_wedges_share_one_edge(int count)
    {
        // Wedges round the z axis with gaps between them; each may keep its own edge only.
        List<Solid> wedges = [];
        for (int i = 0; i < count; i++)
        {
            Point2 p = On(360.0 * i / count), q = On(360.0 * (i + 0.5) / count);
            wedges.Add(Shapes.Extrude(Region.Polygon([new(0, 0), p, q]), 0, 4));
        }

        SolidOutcome outcome = SolidEvaluator.Evaluate(Solid.Union(wedges));

        AssertClean(outcome);
        Assert.Equal(count, Measure.Shells(outcome.Solid!.Mesh));
        Assert.NotEmpty(outcome.Openings);

        static Point2 On(double degrees) => new(8 * Angle.FromDegrees(degrees).Cos, 8 * Angle.FromDegrees(degrees).Sin);
    }

    [Fact]
    public void Sixty_four_equal_operands_are_one()
    {
        SolidMesh union = Clean(Solid.Union(Enumerable.Range(0, 64).Select(_ => Shapes.Sphere(2, 8))));

        Assert.Equal(Clean(Shapes.Sphere(2, 8)).Mesh.Vertices.Order(), union.Mesh.Vertices.Order());
    }

    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(10)]
    [InlineData(200)]
    public void Solids_of_a_few_steps_are_cut_exactly(int steps)
    {
        double size = steps * Lattice.Step;
        Solid small = Shapes.Box(new Point3(0, 0, 0), new Point3(size, size, size));
        double half = (steps / 2) * Lattice.Step;

        SolidMesh rest = Clean(small.Less(small.Moved(Transform3.Shift(half, half, half))));

        double expected = Math.Pow(size, 3) - Math.Pow(size - half, 3);
        Assert.Equal(expected, Measure.Volume(rest.Mesh), expected * 1e-9);
    }

    [Fact]
    public void A_solid_less_itself_is_empty_also_turned()
    {
        Solid turned = Cube.Moved(Transform3.TurnX(Angle.FromDegrees(30)).Then(Transform3.TurnZ(Angle.FromDegrees(11.25))));

        Assert.True(Clean(Cube.Less(Cube)).IsEmpty);
        Assert.True(Clean(turned.Less(turned)).IsEmpty);
    }

    [Fact]
    public void An_open_mesh_is_refused_with_its_edge()
    {
        SourceSolid open = new([new(0, 0, 0), new(1, 0, 0), new(0, 1, 0), new(0, 0, 1)], [0, 2, 1, 0, 1, 3, 1, 2, 3], []);

        ArgumentException error = Assert.Throws<ArgumentException>(() => SolidEvaluator.Evaluate(open));

        Assert.Contains("not closed along the edge", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Faces_keep_their_tags_and_a_cut_gives_its_own()
    {
        FaceTag body = new(1), hole = new(2);
        Solid cutter = Shapes.Box(new Point3(1, 1, -1), new Point3(3, 3, 5));

        Mesh mesh = Clean(Cube.Tagged(body).Less(cutter.Tagged(hole))).Mesh;

        Assert.Equal(4 * 2 * 4, Measure.Area(mesh, hole), 1e-9);
        Assert.Equal((6 * 16) - (2 * 4), Measure.Area(mesh, body), 1e-9);
    }

    private static SolidMesh Clean(Solid solid)
    {
        SolidOutcome outcome = SolidEvaluator.Evaluate(solid);
        AssertClean(outcome);
        return outcome.Solid!;
    }

    private static void AssertClean(SolidOutcome outcome)
    {
        Assert.True(outcome.Solid is not null, outcome.Defect?.ToString());
        AuditReport report = MeshAudit.Run(outcome.Solid!.Mesh);
        Assert.True(report.IsClean, report.ToString());
    }

    // In steps.
    private static double SmallestAltitude(Mesh mesh)
    {
        double smallest = double.PositiveInfinity;
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            Point3 a = mesh.Vertices[mesh.Triangles[3 * t]].ToMillimetres(), b = mesh.Vertices[mesh.Triangles[(3 * t) + 1]].ToMillimetres();
            Point3 c = mesh.Vertices[mesh.Triangles[(3 * t) + 2]].ToMillimetres();
            double longest = Math.Max(Point3.Distance(a, b), Math.Max(Point3.Distance(b, c), Point3.Distance(c, a)));
            smallest = Math.Min(smallest, Point3.Cross(b - a, c - a).Length / longest / Lattice.Step);
        }

        return smallest;
    }
}
