using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Formats;

/// <summary>A triangle turned so that its lowest corner comes first; turning keeps its orientation.</summary>
internal readonly record struct CanonicalTriangle(LatticePoint3 A, LatticePoint3 B, LatticePoint3 C) : IComparable<CanonicalTriangle>
{
    /// <summary>The outward unit normal; zero for a triangle without area.</summary>
    public Point3 Normal
    {
        get
        {
            // Differences need 26 bits, so each product fits 52 and each difference of two products 53: exact in a double.
            long ux = (long)B.X - A.X, uy = (long)B.Y - A.Y, uz = (long)B.Z - A.Z;
            long vx = (long)C.X - A.X, vy = (long)C.Y - A.Y, vz = (long)C.Z - A.Z;
            Point3 cross = new((uy * vz) - (uz * vy), (uz * vx) - (ux * vz), (ux * vy) - (uy * vx));
            double length = cross.Length;
            return length == 0 ? default : new Point3(Unsigned(cross.X / length), Unsigned(cross.Y / length), Unsigned(cross.Z / length));
        }
    }

    public int CompareTo(CanonicalTriangle other)
    {
        int byA = A.CompareTo(other.A);
        if (byA != 0)
        {
            return byA;
        }

        int byB = B.CompareTo(other.B);
        return byB != 0 ? byB : C.CompareTo(other.C);
    }

    /// <summary>All triangles of a mesh, lowest first.</summary>
    public static CanonicalTriangle[] InOrder(Mesh mesh)
    {
        var all = new CanonicalTriangle[mesh.TriangleCount];
        for (int t = 0; t < all.Length; t++)
        {
            all[t] = Of(
                mesh.Vertices[mesh.Triangles[3 * t]],
                mesh.Vertices[mesh.Triangles[(3 * t) + 1]],
                mesh.Vertices[mesh.Triangles[(3 * t) + 2]]);
        }

        Array.Sort(all);
        return all;
    }

    private static CanonicalTriangle Of(LatticePoint3 a, LatticePoint3 b, LatticePoint3 c)
    {
        if (a <= b && a <= c)
        {
            return new CanonicalTriangle(a, b, c);
        }

        return b <= c ? new CanonicalTriangle(b, c, a) : new CanonicalTriangle(c, a, b);
    }

    // A negative zero would be another byte for the same direction.
    private static double Unsigned(double value) => value == 0 ? 0 : value;
}
