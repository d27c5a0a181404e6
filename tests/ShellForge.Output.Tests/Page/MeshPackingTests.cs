using System.IO.Compression;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Output.Page;

namespace ShellForge.Output.Tests.Page;

public class MeshPackingTests
{
    [Property]
    public Property What_is_packed_comes_back_to_the_last_lattice_step() => Prop.ForAll(Vertices.ToArbitrary(), vertices =>
    {
        int[] triangles =
            [.. Enumerable.Range(0, vertices.Length).SelectMany(i => new[] { i, (i * 7 + 1) % vertices.Length, vertices.Length - 1 - i })];
        var mesh = new Mesh([.. vertices], [.. triangles], [.. new FaceTag[vertices.Length]]);

        (LatticePoint3[] places, int[] indices) = Unpacked(PackedMesh.Of(mesh));

        return places.SequenceEqual(vertices) && indices.SequenceEqual(triangles);
    });

    // Corners of the lattice's range beside each other: differences of the full range, both ways.
    private static Gen<LatticePoint3[]> Vertices =>
        Gen.OneOf(Gen.Choose(-5, 5), Gen.Elements(-(1 << 24), 1 << 24, 0, 127, 128, -128), Gen.Choose(-(1 << 24), 1 << 24)).Three()
            .Select(c => new LatticePoint3(c.Item1, c.Item2, c.Item3)).ArrayOf().Where(all => all.Length > 3);

    private static (LatticePoint3[] Places, int[] Indices) Unpacked(PackedMesh packed)
    {
        using var deflate = new DeflateStream(new MemoryStream(Convert.FromBase64String(packed.Data)), CompressionMode.Decompress);
        var places = new LatticePoint3[packed.Vertices];
        LatticePoint3 last = default;
        for (int i = 0; i < places.Length; i++)
        {
            last = new LatticePoint3(last.X + Signed(deflate), last.Y + Signed(deflate), last.Z + Signed(deflate));
            places[i] = last;
        }

        int[] indices = new int[3 * packed.Triangles];
        int vertex = 0;
        for (int i = 0; i < indices.Length; i++)
        {
            vertex += Signed(deflate);
            indices[i] = vertex;
        }

        Assert.Equal(-1, deflate.ReadByte());
        return (places, indices);
    }

    private static int Signed(Stream bytes)
    {
        long value = 0;
        for (int shift = 0; ; shift += 7)
        {
            int b = bytes.ReadByte();
            Assert.InRange(b, 0, 255);
            value += (long)(b % 128) << shift;
            if (b < 128)
            {
                return (int)(value % 2 == 0 ? value / 2 : -(value + 1) / 2);
            }
        }
    }
}
