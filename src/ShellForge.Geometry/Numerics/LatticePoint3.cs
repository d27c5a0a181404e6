namespace ShellForge.Geometry.Numerics;

/// <summary>
/// A point whose coordinates are counts of lattice steps (2^-16 mm each). Within the domain of ±256 mm every count fits 24 bits
/// and a sign, so the millimetre value is exact in float32: what is audited is to the bit what a mesh file holds.
/// </summary>
public readonly record struct LatticePoint3(int X, int Y, int Z) : IComparable<LatticePoint3>
{
    /// <summary>The exact place in mm.</summary>
    public Point3 ToMillimetres() => new(X * Lattice.Step, Y * Lattice.Step, Z * Lattice.Step);

    /// <summary>Order by x, then y, then z.</summary>
    public int CompareTo(LatticePoint3 other)
    {
        int byX = X.CompareTo(other.X);
        if (byX != 0)
        {
            return byX;
        }

        int byY = Y.CompareTo(other.Y);
        return byY != 0 ? byY : Z.CompareTo(other.Z);
    }

    /// <summary>Order by x, then y, then z.</summary>
    public static bool operator <(LatticePoint3 a, LatticePoint3 b) => a.CompareTo(b) < 0;

    /// <summary>Order by x, then y, then z.</summary>
    public static bool operator >(LatticePoint3 a, LatticePoint3 b) => a.CompareTo(b) > 0;

    /// <summary>Order by x, then y, then z.</summary>
    public static bool operator <=(LatticePoint3 a, LatticePoint3 b) => a.CompareTo(b) <= 0;

    /// <summary>Order by x, then y, then z.</summary>
    public static bool operator >=(LatticePoint3 a, LatticePoint3 b) => a.CompareTo(b) >= 0;
}
