using System.Buffers.Binary;
using System.Text;
using System.Text.Json;
using ShellForge.Formats.Stl;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Cli.Tests.Verbs;

public class InspectVerbTests
{
    private static byte[] Cube(Func<byte[], byte[]>? damage = null)
    {
        var box = (SourceSolid)Shapes.Box(new Point3(0, 0, 0), new Point3(10, 20, 30));
        var mesh = new Mesh(
            [.. box.Vertices.Select(Lattice.ToLattice)], box.Triangles, [.. new FaceTag[box.Triangles.Length / 3]]);
        using var stream = new MemoryStream();
        StlWriter.Write(stream, mesh, "cube");
        byte[] bytes = stream.ToArray();
        return damage is null ? bytes : damage(bytes);
    }

    private static (int Exit, string Text) Inspected(byte[] content)
    {
        using var bench = new Bench();
        File.WriteAllBytes(bench.Folder.File("part.stl"), content);
        int exit = bench.Run("inspect", "part.stl");
        return (exit, bench.Out);
    }

    private static byte[] WithoutTriangle(byte[] bytes, int triangle)
    {
        byte[] shorter = [.. bytes[..(84 + (50 * triangle))], .. bytes[(84 + (50 * (triangle + 1)))..]];
        BinaryPrimitives.WriteInt32LittleEndian(shorter.AsSpan(80), BinaryPrimitives.ReadInt32LittleEndian(bytes.AsSpan(80)) - 1);
        return shorter;
    }

    private static byte[] Flipped(byte[] bytes, int triangle)
    {
        Span<byte> corners = bytes.AsSpan(84 + (50 * triangle) + 12, 36);
        byte[] second = corners[12..24].ToArray();
        corners[24..36].CopyTo(corners[12..]);
        second.CopyTo(corners[24..]);
        return bytes;
    }

    private static void Says(byte[] content, params string[] words)
    {
        (int exit, string text) = Inspected(content);
        Assert.Equal((int)ExitCode.Stopped, exit);
        Assert.Contains("NOT SOUND", text, StringComparison.Ordinal);
        Assert.All(words, word => Assert.Contains(word, text, StringComparison.Ordinal));
    }

    [Fact]
    public void A_sound_cube_is_told_with_its_sizes()
    {
        (int exit, string text) = Inspected(Cube());

        Assert.Equal(0, exit);
        Assert.Contains("sound", text, StringComparison.Ordinal);
        Assert.Contains("12 triangles, 10 x 20 x 30 mm, 6000 mm\u00B3, surface 2200 mm\u00B2, overhang 0 mm\u00B2", text,
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_hole_is_told_with_its_place() => Says(WithoutTriangle(Cube(), 0), "open-edge (3)", "at (0,", "triangle");

    [Fact]
    public void A_flipped_triangle_is_told_with_its_number() => Says(Flipped(Cube(), 4), "flipped-edge (3)", "triangle", "5");

    [Fact]
    public void A_crossing_is_told_with_both_triangles()
    {
        // Two cubes in one file, the second moved into the first.
        byte[] first = Cube();
        byte[] second = Cube();
        for (int t = 0; t < 12; t++)
        {
            for (int i = 3; i < 12; i++)
            {
                Span<byte> number = second.AsSpan(84 + (50 * t) + (4 * i), 4);
                BinaryPrimitives.WriteSingleLittleEndian(number, BinaryPrimitives.ReadSingleLittleEndian(number) + 5);
            }
        }

        byte[] both = [.. first, .. second[84..]];
        both[80] = 24;

        Says(both, "crossing-triangles", " and ");
    }

    [Fact]
    public void A_truncated_file_is_told_with_its_end() => Says(Cube()[..400], "truncated", "byte 400", "open-edge");

    [Fact]
    public void A_coordinate_that_is_no_number_is_told_with_its_triangle() =>
        Says(Cube(bytes =>
        {
            BinaryPrimitives.WriteSingleLittleEndian(bytes.AsSpan(84 + 100 + 12), float.NaN);
            return bytes;
        }), "not-a-number", "triangle 3");

    [Fact]
    public void An_empty_file_is_told() => Says([], "empty-file");

    [Fact]
    public void A_text_file_is_read_and_its_hole_told() =>
        Says(
            Encoding.ASCII.GetBytes(
                "solid a\nfacet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex 1 0 0\nvertex 0 1 0\nendloop\nendfacet\nendsolid a\n"),
            "text STL", "open-edge (3)");

    [Fact]
    public void A_text_that_breaks_off_is_told_with_its_line() =>
        Says(Encoding.ASCII.GetBytes("solid a\nfacet normal 0 0 1\nouter loop\nvertex 0 0 oops"), "syntax", "line 4", "oops");

    [Fact]
    public void A_file_that_is_not_there_is_file_trouble()
    {
        using var bench = new Bench();

        Assert.Equal((int)ExitCode.FileTrouble, bench.Run("inspect", "nothing.stl"));
        Assert.Contains("nothing.stl: there is no such file", bench.Err, StringComparison.Ordinal);
    }

    [Fact]
    public void Machines_get_every_fault_with_its_place()
    {
        using var bench = new Bench();
        File.WriteAllBytes(bench.Folder.File("part.stl"), WithoutTriangle(Cube(), 0));

        int exit = bench.Run("inspect", "part.stl", "--json");

        JsonElement fault = bench.Json().GetProperty("files")[0].GetProperty("bodies")[0].GetProperty("faults")[0];
        Assert.Equal((int)ExitCode.Stopped, exit);
        Assert.Equal("open-edge", fault.GetProperty("code").GetString());
        Assert.Equal(3, fault.GetProperty("at").GetArrayLength());
    }
}
