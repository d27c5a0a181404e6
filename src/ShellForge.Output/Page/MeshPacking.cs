using System.Buffers;
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
    // 32 bits in bytes of seven.
    private const int MostBytes = 5;

    /// <summary>Packs a mesh; the same mesh gives the same text.</summary>
    public static PackedMesh Of(Mesh mesh)
    {
        byte[] bytes = ArrayPool<byte>.Shared.Rent(MostBytes * ((3 * mesh.Vertices.Length) + mesh.Triangles.Length));
        int end = 0;
        int x = 0, y = 0, z = 0;
        foreach (var vertex in mesh.Vertices)
        {
            Append(bytes, ref end, vertex.X - x);
            Append(bytes, ref end, vertex.Y - y);
            Append(bytes, ref end, vertex.Z - z);
            (x, y, z) = (vertex.X, vertex.Y, vertex.Z);
        }

        int before = 0;
        foreach (int number in mesh.Triangles)
        {
            Append(bytes, ref end, number - before);
            before = number;
        }

        string data = Deflated(bytes.AsSpan(0, end));
        ArrayPool<byte>.Shared.Return(bytes);
        return new PackedMesh(mesh.Vertices.Length, mesh.TriangleCount, data);
    }

    // Base64 of bytes deflated without a header.
    private static string Deflated(ReadOnlySpan<byte> bytes)
    {
        var packed = new MemoryStream();
        using (var deflate = new DeflateStream(packed, CompressionLevel.Optimal, leaveOpen: true))
        {
            deflate.Write(bytes);
        }

        return Convert.ToBase64String(packed.GetBuffer(), 0, (int)packed.Length);
    }

    private static void Append(byte[] bytes, ref int end, int value)
    {
        uint zigzag = (uint)((value << 1) ^ (value >> 31));
        while (zigzag >= 128)
        {
            bytes[end++] = (byte)(zigzag | 128);
            zigzag >>= 7;
        }

        bytes[end++] = (byte)zigzag;
    }
}
