using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Geometry.Measuring;

/// <summary>
/// Sizes of a mesh. Volume and first moments are summed in integers, so they don't depend on the order of the triangles, and
/// round once at the end.
/// </summary>
public static class Measure
{
    private const double CubicStep = Lattice.Step * Lattice.Step * Lattice.Step;

    /// <summary>Volume in mm3: positive when the triangles look outward. Exact but for one rounding to double.</summary>
    public static double Volume(Mesh mesh)
    {
        Int128 six = 0;
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            six += SixVolumes(mesh, t);
        }

        return (double)six / 6 * CubicStep;
    }

    /// <summary>Surface in mm2.</summary>
    public static double Area(Mesh mesh)
    {
        double twice = 0;
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            twice += DoubleNormal(mesh, t).Length;
        }

        return twice / 2;
    }

    /// <summary>Centre of gravity in mm of a body of even density; the origin when there is no volume.</summary>
    public static Point3 Centroid(Mesh mesh)
    {
        // Six volumes of 76 bits times a sum of three coordinates: 103 bits, with room for 2^24 triangles.
        Int128 six = 0;
        Int128 x = 0;
        Int128 y = 0;
        Int128 z = 0;
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            Int128 part = SixVolumes(mesh, t);
            (LatticePoint3 a, LatticePoint3 b, LatticePoint3 c) = Corners(mesh, t);
            six += part;
            x += part * (a.X + b.X + c.X);
            y += part * (a.Y + b.Y + c.Y);
            z += part * (a.Z + b.Z + c.Z);
        }

        double scale = Lattice.Step / (4 * (double)six);
        return six == 0 ? default : new Point3((double)x * scale, (double)y * scale, (double)z * scale);
    }

    /// <summary>The smallest box round all triangles.</summary>
    public static Box3 Bounds(Mesh mesh)
    {
        Box3 box = Box3.Empty;
        foreach (int v in mesh.Triangles)
        {
            box = box.Including(mesh.Vertices[v].ToMillimetres());
        }

        return box;
    }

    /// <summary>How many closed surfaces there are: connected sets of triangles. A body with a void inside has two.</summary>
    public static int Shells(Mesh mesh) => new ShellNumbers(mesh.Vertices.Length, mesh.Triangles.AsSpan()).Count;

    /// <summary>How many handles all shells have together: a ball 0, a ring 1, a plate with n holes n.</summary>
    /// <returns>The genus of a closed mesh; for others the number says nothing.</returns>
    public static int Genus(Mesh mesh)
    {
        int used = mesh.Triangles.Distinct().Count();
        int edges = mesh.Triangles.Length / 2;
        int euler = used - edges + mesh.TriangleCount;
        return Shells(mesh) - (euler / 2);
    }

    /// <summary>The share of faces of one tag in the surface, in mm2.</summary>
    public static double Area(Mesh mesh, FaceTag tag)
    {
        double twice = 0;
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            twice += mesh.Tags[t] == tag ? DoubleNormal(mesh, t).Length : 0;
        }

        return twice / 2;
    }

    /// <summary>Vector product of two sides, in mm2: twice the area, looking outward.</summary>
    internal static Point3 DoubleNormal(Mesh mesh, int triangle)
    {
        (LatticePoint3 a, LatticePoint3 b, LatticePoint3 c) = Corners(mesh, triangle);
        Point3 first = b.ToMillimetres() - a.ToMillimetres();
        Point3 second = c.ToMillimetres() - a.ToMillimetres();
        return Point3.Cross(first, second);
    }

    /// <summary>The corners of a triangle.</summary>
    internal static (LatticePoint3 A, LatticePoint3 B, LatticePoint3 C) Corners(Mesh mesh, int triangle) => (
        mesh.Vertices[mesh.Triangles[3 * triangle]],
        mesh.Vertices[mesh.Triangles[(3 * triangle) + 1]],
        mesh.Vertices[mesh.Triangles[(3 * triangle) + 2]]);

    // Coordinates of 24 bits: a product of two fits a long, of three an Int128.
    private static Int128 SixVolumes(Mesh mesh, int triangle)
    {
        (LatticePoint3 a, LatticePoint3 b, LatticePoint3 c) = Corners(mesh, triangle);
        long x = ((long)b.Y * c.Z) - ((long)b.Z * c.Y);
        long y = ((long)b.Z * c.X) - ((long)b.X * c.Z);
        long z = ((long)b.X * c.Y) - ((long)b.Y * c.X);
        return ((Int128)a.X * x) + ((Int128)a.Y * y) + ((Int128)a.Z * z);
    }
}
