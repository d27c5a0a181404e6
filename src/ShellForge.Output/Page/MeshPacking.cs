using System.IO.Compression;
using ShellForge.Geometry.Solids;

namespace ShellForge.Output.Page;

/// <summary>
/// A mesh as the page takes it: lattice counts and vertex numbers as differences to the one before, zigzag varints, deflated, base64.
/// Nothing is lost: the page shows the very vertices of the written file.
/// </summary>
/// <param name="Vertices">Number of vertices.</param>
/// <param name="Triangles">Number of triangles.</param>
/// <param name="Data">Base64 of the deflated bytes.</param>
public sealed record PackedMesh(int Vertices, int Triangles, string Data)
{
    /// <summary>Packs a mesh; the same mesh gives the same text.</summary>
    public static PackedMesh Of(Mesh mesh)
    {
        var bytes = new MemoryStream();
        int x = 0, y = 0, z = 0;
        foreach (var vertex in mesh.Vertices)
        {
            Append(bytes, vertex.X - x);
            Append(bytes, vertex.Y - y);
            Append(bytes, vertex.Z - z);
            (x, y, z) = (vertex.X, vertex.Y, vertex.Z);
        }

        int before = 0;
        foreach (int number in mesh.Triangles)
        {
            Append(bytes, number - before);
            before = number;
        }

        return new PackedMesh(mesh.Vertices.Length, mesh.TriangleCount, Deflated(bytes.ToArray()));
    }

    /// <summary>Base64 of bytes deflated without a header.</summary>
    internal static string Deflated(byte[] bytes)
    {
        var packed = new MemoryStream();
        using (var deflate = new DeflateStream(packed, CompressionLevel.Optimal, leaveOpen: true))
        {
            deflate.Write(bytes);
        }

        return Convert.ToBase64String(packed.GetBuffer(), 0, (int)packed.Length);
    }

    // Differences of coordinates reach 2^25 either way, so the zigzag fits 27 bits: four bytes of seven.
    private static void Append(Stream bytes, int value)
    {
        uint zigzag = (uint)((value << 1) ^ (value >> 31));
        while (zigzag >= 128)
        {
            bytes.WriteByte((byte)(zigzag | 128));
            zigzag >>= 7;
        }

        bytes.WriteByte((byte)zigzag);
    }
}
