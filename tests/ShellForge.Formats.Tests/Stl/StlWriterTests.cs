using System.Buffers.Binary;
using FsCheck.Xunit;
using ShellForge.Formats.Soup;
using ShellForge.Formats.Stl;
using ShellForge.Geometry.Auditing;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Testing;

namespace ShellForge.Formats.Tests.Stl;

public class StlWriterTests
{
    internal static byte[] Written(Mesh mesh, string title = "test body")
    {
        using var stream = new MemoryStream();
        StlWriter.Write(stream, mesh, title);
        return stream.ToArray();
    }

    [Fact]
    public void A_file_is_its_head_its_count_and_fifty_bytes_a_triangle()
    {
        byte[] bytes = Written(Bodies.Tetrahedron());

        Assert.Equal(84 + (4 * 50), bytes.Length);
        Assert.Equal(4, BinaryPrimitives.ReadInt32LittleEndian(bytes.AsSpan(80)));
        Assert.Equal("test body", System.Text.Encoding.ASCII.GetString(bytes, 0, 9));
    }

    [Fact]
    public void The_first_triangle_stands_in_the_file_with_its_outward_normal()
    {
        byte[] bytes = Written(Bodies.Tetrahedron());

        // Sorted by corners the face in x = 0 comes first: origin, z, y.
        float[] numbers = [.. Enumerable.Range(0, 12).Select(i => BinaryPrimitives.ReadSingleLittleEndian(bytes.AsSpan(84 + (4 * i))))];
        Assert.Equal([-1, 0, 0, 0, 0, 0, 0, 0, 1, 0, 1, 0], numbers);
        Assert.DoesNotContain(numbers, n => n == 0 && float.IsNegative(n));
    }

    [Fact]
    public void The_slanted_face_has_a_unit_normal()
    {
        byte[] bytes = Written(Bodies.Tetrahedron());

        float[] normal = [.. Enumerable.Range(0, 3).Select(i => BinaryPrimitives.ReadSingleLittleEndian(bytes.AsSpan(84 + 150 + (4 * i))))];
        Assert.All(normal, n => Assert.Equal((float)(1 / Math.Sqrt(3)), n));
    }

    [Property(Arbitrary = [typeof(Draws.Rows)])]
    public void Every_lattice_coordinate_comes_back_to_the_bit(Draws draws)
    {
        Mesh mesh = Bodies.Drawn(draws, 20);

        SoupFile read = StlReader.Read(Written(mesh));

        Assert.Empty(read.Faults);
        LooseTriangles body = Assert.Single(read.Bodies).Triangles;
        Point3[] expected = [.. mesh.Triangles.Select(v => mesh.Vertices[v].ToMillimetres()).Order(ByPlace)];
        Point3[] actual = [.. body.Coordinates.Chunk(3).Select(c => new Point3(c[0], c[1], c[2])).Order(ByPlace)];
        Assert.Equal(expected, actual);
        Assert.Contains(expected, p => Math.Abs(p.X) == Lattice.LimitMillimetres);
    }

    [Property(Arbitrary = [typeof(Draws.Rows)])]
    public void The_bytes_depend_on_the_solid_and_not_on_the_order_it_was_made_in(Draws draws)
    {
        Mesh mesh = Bodies.Tetrahedron(12.5, -3);

        Assert.Equal(Written(mesh), Written(Bodies.Shuffled(mesh, draws)));
    }

    [Fact]
    public void A_flipped_triangle_gives_other_bytes()
    {
        Mesh mesh = Bodies.Tetrahedron();
        Mesh flipped = new(mesh.Vertices, [1, 2, 0, .. mesh.Triangles[3..]], mesh.Tags);

        Assert.NotEqual(Written(mesh), Written(flipped));
    }

    [Fact]
    public void A_title_that_marks_text_files_is_refused() =>
        Assert.Throws<ArgumentException>(() => Written(Bodies.Tetrahedron(), "Solid tub"));

    private static Comparer<Point3> ByPlace { get; } =
        Comparer<Point3>.Create((a, b) => (a.X, a.Y, a.Z).CompareTo((b.X, b.Y, b.Z)));
}
