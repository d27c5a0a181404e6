using System.Buffers.Binary;
using System.Text;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Formats.Stl;

/// <summary>
/// Binary STL. Lattice coordinates within ±256 mm are exact in float32, so the file holds to the bit what was audited. Triangles
/// are written in an order of their own, so the bytes depend on the solid alone and not on how it was made.
/// </summary>
public static class StlWriter
{
    internal const int HeaderLength = 80;
    internal const int TriangleLength = 50;

    /// <summary>Writes a mesh in mm.</summary>
    /// <param name="stream">Where to; stays open.</param>
    /// <param name="mesh">The mesh.</param>
    /// <param name="title">Text for the header, printable ASCII; cut after 80 characters. Must not begin with <c>solid</c>, which marks
    /// text files.</param>
    /// <exception cref="ArgumentException">The title would make readers take the file for text.</exception>
    public static void Write(Stream stream, Mesh mesh, string title)
    {
        if (title.StartsWith("solid", StringComparison.OrdinalIgnoreCase))
        {
            throw new ArgumentException("A binary header must not begin with 'solid'.", nameof(title));
        }

        byte[] head = new byte[HeaderLength + 4];
        string cut = title.Length > HeaderLength ? title[..HeaderLength] : title;
        Encoding.ASCII.GetBytes(cut, head);
        BinaryPrimitives.WriteInt32LittleEndian(head.AsSpan(HeaderLength), mesh.TriangleCount);
        stream.Write(head);

        const int perBlock = 1024;
        byte[] block = new byte[perBlock * TriangleLength];
        int filled = 0;
        foreach (CanonicalTriangle triangle in CanonicalTriangle.InOrder(mesh))
        {
            WriteTriangle(block.AsSpan(filled, TriangleLength), triangle);
            filled += TriangleLength;
            if (filled == block.Length)
            {
                stream.Write(block);
                filled = 0;
            }
        }

        stream.Write(block, 0, filled);
    }

    private static void WriteTriangle(Span<byte> target, CanonicalTriangle triangle)
    {
        Point3 normal = triangle.Normal;
        WritePoint(target, normal.X, normal.Y, normal.Z);
        WriteCorner(target[12..], triangle.A);
        WriteCorner(target[24..], triangle.B);
        WriteCorner(target[36..], triangle.C);
        target[48] = 0;
        target[49] = 0;
    }

    private static void WriteCorner(Span<byte> target, LatticePoint3 corner)
    {
        Point3 p = corner.ToMillimetres();
        WritePoint(target, p.X, p.Y, p.Z);
    }

    private static void WritePoint(Span<byte> target, double x, double y, double z)
    {
        BinaryPrimitives.WriteSingleLittleEndian(target, (float)x);
        BinaryPrimitives.WriteSingleLittleEndian(target[4..], (float)y);
        BinaryPrimitives.WriteSingleLittleEndian(target[8..], (float)z);
    }
}
