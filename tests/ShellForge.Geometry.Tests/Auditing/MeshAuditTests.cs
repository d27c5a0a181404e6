using System.Collections.Immutable;
using FsCheck.Xunit;
using ShellForge.Geometry.Auditing;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Testing;

namespace ShellForge.Geometry.Tests.Auditing;

public sealed class MeshAuditTests
{
    private static readonly Mesh Cube = Meshes.Of(Shapes.Box(new(0, 0, 0), new(8, 8, 8)));

    public static TheoryData<string> Bodies => [.. BodyOf.Keys];

    private static Dictionary<string, Solid> BodyOf { get; } = new()
    {
        ["box"] = Shapes.Box(new(0, 0, 0), new(8, 8, 8)),
        ["sphere"] = Shapes.Sphere(11, 64),
        ["annulus"] = Shapes.Extrude(Region.Annulus(Ring.Peg(40), Ring.Peg(40).Coaxial(20, RingSide.Outside)), 0, 2),
        ["frustum"] = Shapes.Taper(Ring.Peg(5), 0, Ring.Peg(5).Coaxial(2, RingSide.Outside), 4, new(100, -100)),
        ["torus"] = Shapes.Revolve([new(10, 0), new(12, 1), new(10, 3), new(9, 1)], 40, Angle.FromDegrees(1), RingSide.Outside),
        ["turned"] = Shapes.Sphere(11, 64).Moved(Transform3.TurnX(Angle.FromDegrees(17)).Then(Transform3.Shift(200, 30, 4))),
        ["mirrored"] = Shapes.Taper(Ring.Peg(5), 0, Ring.Peg(5).Coaxial(2, RingSide.Outside), 4, new(30, 0))
            .Moved(Transform3.Scale(-1, 1, 1)),
    };

    [Theory]
    [MemberData(nameof(Bodies))]
    public void A_sound_body_is_clean_on_the_lattice_and_as_its_file(string name)
    {
        Mesh mesh = Meshes.Of(BodyOf[name]);
        AuditReport report = MeshAudit.Run(mesh);
        Assert.True(report.IsClean, report.ToString());
        Assert.Equal(1, report.ShellCount);
        AuditReport soup = MeshAudit.Run(LooseTriangles.Of(mesh));
        Assert.True(soup.IsClean, soup.ToString());
        Assert.NotNull(MeshAudit.Accept(mesh, out _));
    }

    [Fact]
    public void A_missing_triangle_leaves_three_open_edges_with_their_places()
    {
        AuditReport report = MeshAudit.Run(Meshes.Reordered(Cube, [.. Enumerable.Range(1, 11)]));
        Assert.Equal(3, report.Count(MeshFaultKind.OpenEdge));
        Assert.All(report.Faults, f => Assert.Equal(MeshFaultKind.OpenEdge, f.Kind));
        Assert.All(report.Faults, f => Assert.InRange(f.Place.X, 0, 8));
        Assert.Null(MeshAudit.Accept(Meshes.Reordered(Cube, [1, 2]), out _));
    }

    [Fact]
    public void A_turned_triangle_has_three_flipped_edges()
    {
        int[] t = [.. Cube.Triangles];
        (t[1], t[2]) = (t[2], t[1]);
        AuditReport report = MeshAudit.Run(new Mesh(Cube.Vertices, [.. t], Cube.Tags));
        Assert.Equal("3 FlippedEdge", report.ToString());
        Assert.Contains(report.Faults, f => f.Triangle == 0);
    }

    [Fact]
    public void Two_boxes_with_a_common_edge_have_a_non_manifold_edge()
    {
        AuditReport report = MeshAudit.Run(Mesh.Joined([Cube, Meshes.Shifted(Cube, 8 << 16, 8 << 16, 0)]));
        Assert.Equal("1 NonManifoldEdge", report.ToString());
        Assert.Equal(new Point3(8, 8, 4), report.Faults[0].Place);
    }

    [Fact]
    public void Two_boxes_with_a_common_corner_have_a_split_vertex()
    {
        AuditReport report = MeshAudit.Run(Mesh.Joined([Cube, Meshes.Shifted(Cube, 8 << 16, 8 << 16, 8 << 16)]));
        Assert.Equal("1 SplitVertex", report.ToString());
        Assert.Equal(new Point3(8, 8, 8), report.Faults[0].Place);
    }

    [Fact]
    public void Boxes_that_pierce_or_share_a_face_are_found()
    {
        AuditReport pierced = MeshAudit.Run(Mesh.Joined([Cube, Meshes.Shifted(Cube, 4 << 16, 3 << 16, 2 << 16)]));
        Assert.True(pierced.Count(MeshFaultKind.CrossingTriangles) >= 6, pierced.ToString());
        AuditReport stacked = MeshAudit.Run(Mesh.Joined([Cube, Meshes.Shifted(Cube, 1 << 16, 1 << 16, 8 << 16)]));
        Assert.True(stacked.Count(MeshFaultKind.OverlappingTriangles) >= 2, stacked.ToString());
        Assert.All(stacked.Faults.Where(f => f.Kind == MeshFaultKind.OverlappingTriangles), f => Assert.Equal(8, f.Place.Z));
    }

    [Theory]
    [InlineData(-1, "Crossing")]
    [InlineData(0, "Overlapping")]
    [InlineData(1, "clean")]
    public void One_lattice_step_decides(int gap, string expected)
    {
        Mesh small = Meshes.Of(Shapes.Box(new(1, 1, 0), new(2, 2, 1)));
        AuditReport report = MeshAudit.Run(Mesh.Joined([Cube, Meshes.Shifted(small, 0, 0, (8 << 16) + gap)]));
        Assert.Contains(expected, report.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_void_must_look_inward_and_a_body_in_a_void_outward()
    {
        Mesh Ball(double radius) => Meshes.Of(Shapes.Sphere(radius, 32));
        Assert.True(MeshAudit.Run(Mesh.Joined([Ball(9), Meshes.Inverted(Ball(7)), Ball(5)])).IsClean);
        Assert.Equal("1 InsideOutShell", MeshAudit.Run(Meshes.Inverted(Ball(9))).ToString());
        Assert.Equal("1 MisnestedShell", MeshAudit.Run(Mesh.Joined([Ball(9), Ball(7)])).ToString());
        Assert.Equal("1 MisnestedShell",
            MeshAudit.Run(Mesh.Joined([Ball(9), Meshes.Inverted(Ball(7)), Meshes.Inverted(Ball(5))])).ToString());
        Assert.Equal("1 InsideOutShell", MeshAudit.Run(LooseTriangles.Of(Meshes.Inverted(Ball(9)))).ToString());
        Assert.Equal("1 InsideOutShell",
            MeshAudit.Run(Mesh.Joined([Ball(9), Meshes.Shifted(Meshes.Inverted(Ball(7)), 30 << 16, 0, 0)])).ToString());
    }

    [Fact]
    public void Degenerate_triangles_and_double_faces_are_found()
    {
        Mesh doubled = Mesh.Joined([Cube, Cube]);
        AuditReport twice = MeshAudit.Run(doubled);
        Assert.Equal(18, twice.Count(MeshFaultKind.NonManifoldEdge));
        Assert.True(twice.Count(MeshFaultKind.OverlappingTriangles) >= 12);

        ImmutableArray<LatticePoint3> line = [new(0, 0, 0), new(3, 3, 3), new(9, 9, 9)];
        Assert.Equal(1, MeshAudit.Run(new Mesh(line, [0, 1, 2], [FaceTag.None])).Count(MeshFaultKind.DegenerateTriangle));
        Assert.Equal("1 DegenerateTriangle", MeshAudit.Run(new Mesh(line, [0, 1, 1], [FaceTag.None])).ToString());
    }

    [Fact]
    public void Corners_outside_the_domain_and_values_that_are_no_numbers_are_found()
    {
        Mesh far = new([new(0, 0, 0), new((1 << 24) + 1, 0, 0), new(0, 5, 0)], [0, 1, 2], [FaceTag.None]);
        Assert.Equal("1 OutOfDomain", MeshAudit.Run(far).ToString());
        AuditReport soup =
            MeshAudit.Run(new LooseTriangles([float.NaN, 0, 0, 1, 2, 3, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, float.PositiveInfinity, 0]));
        Assert.Equal("2 NotANumber", soup.ToString());
        Assert.Equal(new Point3(1, 2, 3), soup.Faults[0].Place);
    }

    [Fact]
    public void A_foreign_file_far_off_the_lattice_is_audited_exactly()
    {
        // A tetrahedron of values that share no grid, welded by equality alone; then a corner is moved by one bit in one triangle.
        float[][] p = [[1e-17f, 0, -0f], [1000, 1e-3f, 0], [0.1f, 777, 3e-12f], [0, 0, 5e4f]];
        int[] t = [0, 2, 1, 0, 1, 3, 1, 2, 3, 2, 0, 3];
        float[] soup = [.. t.SelectMany(v => p[v])];
        Assert.Equal("clean", MeshAudit.Run(new LooseTriangles([.. soup])).ToString());
        soup[1] = BitConverter.Int32BitsToSingle(1);
        AuditReport moved = MeshAudit.Run(new LooseTriangles([.. soup]));
        Assert.Equal(4, moved.Count(MeshFaultKind.OpenEdge));
    }

    [Fact]
    public void An_empty_mesh_is_clean() => Assert.True(MeshAudit.Run(Mesh.Empty).IsClean);

    [Property(MaxTest = 30, Arbitrary = [typeof(Draws.Rows)])]
    public void All_crossing_pairs_of_a_random_heap_are_found(Draws draws)
    {
        int Coordinate() => draws.About(4);
        var vertices = Enumerable.Range(0, 12).Select(_ => new LatticePoint3(Coordinate(), Coordinate(), Coordinate())).Distinct()
            .ToImmutableArray();
        ImmutableArray<int> triangles =
            [.. Enumerable.Range(0, vertices.Length < 3 ? 0 : 14).SelectMany(_ => Corners(vertices.Length, draws))];
        var mesh = new Mesh(vertices, triangles, [.. new FaceTag[triangles.Length / 3]]);
        RationalTriangle[] exact =
            [.. triangles.Select(v => RationalPoint.From(vertices[v])).Chunk(3).Select(c => new RationalTriangle(c[0], c[1], c[2]))];
        var expected = new HashSet<(int, int)>();
        for (int i = 0; i < exact.Length; i++)
        {
            for (int j = i + 1; j < exact.Length; j++)
            {
                if (!exact[i].IsDegenerate && !exact[j].IsDegenerate && !exact[i].MeetsProperly(exact[j]))
                {
                    expected.Add((i, j));
                }
            }
        }

        foreach (AuditReport report in new[] { MeshAudit.Run(mesh), MeshAudit.Run(LooseTriangles.Of(mesh)) })
        {
            HashSet<(int, int)> found = [.. report.Faults
                .Where(f => f.Kind is MeshFaultKind.CrossingTriangles or MeshFaultKind.OverlappingTriangles)
                .Select(f => (f.Triangle, f.Other))];
            Assert.True(expected.SetEquals(found));
        }
    }

    [Theory]
    [InlineData(0, -50, 0, 0, 50, 0)]
    [InlineData(0, -10, 50, 0, 10, 50)]
    [InlineData(-10, 0, 20, 10, 0, 20)]
    [InlineData(40, -1, 0, 40, 1, 0)]
    public void Triangles_with_a_common_corner_that_meet_beyond_it_are_found(int ax, int ay, int az, int bx, int by, int bz)
    {
        var tip = new LatticePoint3(0, 0, 100);
        var mesh = new Mesh([tip, new(-50, 0, 0), new(50, 0, 0), new(ax, ay, az), new(bx, by, bz)], [0, 1, 2, 0, 3, 4],
            [.. new FaceTag[2]]);

        Assert.Contains(MeshAudit.Run(mesh).Faults,
            fault => fault.Kind is MeshFaultKind.CrossingTriangles or MeshFaultKind.OverlappingTriangles);
    }

    [Property(MaxTest = 100, Arbitrary = [typeof(Draws.Rows)])]
    public void Fans_are_audited_as_all_their_pairs_are(Draws draws)
    {
        Point3[] points = [.. Enumerable.Range(0, 14).Select(_ => new Point3(draws.About(4), draws.About(4), draws.About(4))).Distinct()];
        if (points.Length < 3)
        {
            return;
        }

        int[][] drawn = [.. Enumerable.Range(0, 30).Select(i => i % 3 == 0 ? Corners(points.Length, draws)
            : [0, .. Corners(points.Length - 1, draws)[..2].Select(corner => corner + 1)])];
        AuditSurface surface = AuditSurface.Weld(points, [.. drawn.SelectMany(each => each)], [.. Enumerable.Range(0, drawn.Length)], 1);
        int[] sound = [.. Enumerable.Range(0, drawn.Length).Where(t =>
            !TriangleMeeting<LatticeOrientation>.IsFlat(surface.Corner(t, 0), surface.Corner(t, 1), surface.Corner(t, 2)))];
        (int, int)[] Met(int leastFan) =>
            [.. new MeetingAudit<LatticeOrientation>(surface, sound, leastFan).Run(default).Select(f => (f.Triangle, f.Other)).Order()];

        Assert.Equal(Met(int.MaxValue), Met(3));
    }

    [Fact]
    public async Task Copies_of_one_triangle_are_told_in_time()
    {
        const int copies = 200_000;
        float[] corners = [0, 0, 0, 10, 0, 0, 0, 10, 5];
        var soup = new LooseTriangles([.. Enumerable.Repeat(corners, copies).SelectMany(each => each)]);
        using var stop = new CancellationTokenSource(TimeSpan.FromSeconds(20));

        AuditReport told = await Task.Run(() => MeshAudit.Run(soup, stop.Token));

        Assert.InRange(told.Count(MeshFaultKind.OverlappingTriangles), 1000, 10_000);
    }

    // Three different ones.
    private static int[] Corners(int count, Draws draws) => draws.Shuffled(Enumerable.Range(0, count))[..3];

    [Fact]
    public void Threads_and_order_of_triangles_change_nothing()
    {
        Mesh heap = Mesh.Joined([Meshes.Of(Shapes.Sphere(20, 160)),
            Meshes.Of(Shapes.Sphere(20, 160).Moved(Transform3.Shift(20.1, 3, 1)))]);
        Assert.True(heap.TriangleCount > 20_000);
        AuditReport first = MeshAudit.Run(heap);
        AuditReport again = MeshAudit.Run(heap);
        Assert.Equal(first.Faults.AsEnumerable(), again.Faults);
        Assert.True(first.Count(MeshFaultKind.CrossingTriangles) > 100);
        int[] backwards = [.. Enumerable.Range(0, heap.TriangleCount).Reverse()];
        Assert.Equal(first.ToString(), MeshAudit.Run(Meshes.Reordered(heap, backwards)).ToString());
    }
}
