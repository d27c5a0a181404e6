using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Auditing;

/// <summary>
/// A mesh as the audit sees it: corners in units in which the arithmetic is exact, equal ones welded, and for each triangle
/// where it came from. The stages of the audit read it and add faults.
/// </summary>
internal sealed class AuditSurface
{
    private AuditSurface(Point3[] points, int[] triangles, int[] source, double unit)
    {
        Points = points;
        Triangles = triangles;
        Source = source;
        Unit = unit;
    }

    /// <summary>The distinct corners.</summary>
    public Point3[] Points { get; }

    /// <summary>Three corner numbers a triangle.</summary>
    public int[] Triangles { get; }

    /// <summary>The number of each triangle in the mesh that came in.</summary>
    public int[] Source { get; }

    /// <summary>Length of one coordinate unit in mm.</summary>
    public double Unit { get; }

    /// <summary>How many triangles there are.</summary>
    public int Count => Source.Length;

    /// <summary>
    /// Welds corners of equal coordinates. A zero below zero is zero. Order of first use decides the numbers, so the same mesh
    /// gives the same surface.
    /// </summary>
    public static AuditSurface Weld(ReadOnlySpan<Point3> corners, ReadOnlySpan<int> triangles, int[] source, double unit)
    {
        int size = 16;
        while (size < 2 * corners.Length)
        {
            size *= 2;
        }

        int[] slots = new int[size];
        int[] number = new int[corners.Length];
        var points = new Point3[corners.Length];
        int count = 0;
        for (int i = 0; i < corners.Length; i++)
        {
            Point3 p = new(corners[i].X + 0.0, corners[i].Y + 0.0, corners[i].Z + 0.0);
            int slot = Hash(p) & (size - 1);
            while (slots[slot] != 0 && points[slots[slot] - 1] != p)
            {
                slot = (slot + 1) & (size - 1);
            }

            if (slots[slot] == 0)
            {
                points[count] = p;
                slots[slot] = ++count;
            }

            number[i] = slots[slot] - 1;
        }

        int[] welded = new int[triangles.Length];
        for (int i = 0; i < welded.Length; i++)
        {
            welded[i] = number[triangles[i]];
        }

        return new AuditSurface(points[..count], welded, source, unit);
    }

    /// <summary>A corner of a triangle.</summary>
    public ref readonly Point3 Corner(int triangle, int k) => ref Points[Triangles[(3 * triangle) + k]];

    /// <summary>A place in mm.</summary>
    public Point3 Place(Point3 point) => Unit * point;

    /// <summary>The box of a triangle, exact.</summary>
    public FloatBox BoxOf(int triangle)
    {
        ref readonly Point3 a = ref Corner(triangle, 0);
        ref readonly Point3 b = ref Corner(triangle, 1);
        ref readonly Point3 c = ref Corner(triangle, 2);
        return new FloatBox
        {
            MinX = (float)Math.Min(a.X, Math.Min(b.X, c.X)),
            MinY = (float)Math.Min(a.Y, Math.Min(b.Y, c.Y)),
            MinZ = (float)Math.Min(a.Z, Math.Min(b.Z, c.Z)),
            MaxX = (float)Math.Max(a.X, Math.Max(b.X, c.X)),
            MaxY = (float)Math.Max(a.Y, Math.Max(b.Y, c.Y)),
            MaxZ = (float)Math.Max(a.Z, Math.Max(b.Z, c.Z)),
        };
    }

    private static int Hash(Point3 p)
    {
        ulong h = BitConverter.DoubleToUInt64Bits(p.X) * 0x9E3779B97F4A7C15;
        h = (h ^ (h >> 29) ^ BitConverter.DoubleToUInt64Bits(p.Y)) * 0xBF58476D1CE4E5B9;
        h = (h ^ (h >> 32) ^ BitConverter.DoubleToUInt64Bits(p.Z)) * 0x94D049BB133111EB;
        return (int)(h >> 33);
    }
}
