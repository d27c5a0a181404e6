using System.Buffers.Binary;
using ShellForge.Geometry.Auditing;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Benchmarks;

/// <summary>Writes a mesh as binary STL, for foreign audits.</summary>
internal static class BinaryStl
{
    public static void Write(string path, Mesh mesh)
    {
        byte[] bytes = new byte[84 + (50 * mesh.TriangleCount)];
        BinaryPrimitives.WriteInt32LittleEndian(bytes.AsSpan(80), mesh.TriangleCount);
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            for (int k = 0; k < 3; k++)
            {
                Point3 p = mesh.Vertices[mesh.Triangles[(3 * t) + k]].ToMillimetres();
                int at = 84 + (50 * t) + 12 + (12 * k);
                BinaryPrimitives.WriteSingleLittleEndian(bytes.AsSpan(at), (float)p.X);
                BinaryPrimitives.WriteSingleLittleEndian(bytes.AsSpan(at + 4), (float)p.Y);
                BinaryPrimitives.WriteSingleLittleEndian(bytes.AsSpan(at + 8), (float)p.Z);
            }
        }

        File.WriteAllBytes(path, bytes);
    }

    /// <summary>The triangles of a binary STL.</summary>
    public static LooseTriangles Read(string path)
    {
        byte[] bytes = File.ReadAllBytes(path);
        float[] coordinates = new float[9 * BinaryPrimitives.ReadInt32LittleEndian(bytes.AsSpan(80))];
        for (int i = 0; i < coordinates.Length; i++)
        {
            coordinates[i] = BinaryPrimitives.ReadSingleLittleEndian(bytes.AsSpan(84 + (50 * (i / 9)) + 12 + (4 * (i % 9))));
        }

        return new LooseTriangles([.. coordinates]);
    }

    /// <summary>Volume in mm3, by the divergence theorem.</summary>
    public static double Volume(Mesh mesh)
    {
        Int128 sum = 0;
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            LatticePoint3 a = mesh.Vertices[mesh.Triangles[3 * t]];
            LatticePoint3 b = mesh.Vertices[mesh.Triangles[(3 * t) + 1]];
            LatticePoint3 c = mesh.Vertices[mesh.Triangles[(3 * t) + 2]];
            sum += ((Int128)a.X * (((long)b.Y * c.Z) - ((long)b.Z * c.Y))) + ((Int128)a.Y * (((long)b.Z * c.X) - ((long)b.X * c.Z)))
                + ((Int128)a.Z * (((long)b.X * c.Y) - ((long)b.Y * c.X)));
        }

        return (double)sum / 6 / 65536 / 65536 / 65536;
    }
}
