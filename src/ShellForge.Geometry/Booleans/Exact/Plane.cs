using System.Runtime.CompilerServices;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans.Exact;

/// <summary>
/// The oriented plane through three lattice points: normal components of at most 52 bits with sign, exact both as long and as
/// double, and one of the points. The front is where the three run counter-clockwise.
/// </summary>
internal readonly struct Plane
{
    private const int LowBits = 26;
    private const long LowMask = (1L << LowBits) - 1;
    public readonly long Nx;
    public readonly long Ny;
    public readonly long Nz;
    public readonly LatticePoint3 Anchor;

    public Plane(LatticePoint3 a, LatticePoint3 b, LatticePoint3 c)
    {
        long ux = b.X - a.X, uy = b.Y - a.Y, uz = b.Z - a.Z;
        long vx = c.X - a.X, vy = c.Y - a.Y, vz = c.Z - a.Z;
        Nx = (uy * vz) - (uz * vy);
        Ny = (uz * vx) - (ux * vz);
        Nz = (ux * vy) - (uy * vx);
        Anchor = a;
    }

    private Plane(long nx, long ny, long nz, LatticePoint3 anchor)
    {
        Nx = nx;
        Ny = ny;
        Nz = nz;
        Anchor = anchor;
    }

    public bool IsDegenerate => (Nx | Ny | Nz) == 0;

    /// <summary>N·anchor: the points p of the plane have N·p equal to it. 78 bits.</summary>
    public Int128 Offset
    {
        get
        {
            (long high, long low) = Dot(Nx, Ny, Nz, Anchor.X, Anchor.Y, Anchor.Z);
            return ((Int128)high << LowBits) + low;
        }
    }

    public Plane Flipped() => new(-Nx, -Ny, -Nz, Anchor);

    /// <summary>Exact N·(p - anchor), 78 bits with sign.</summary>
    public Int128 Height(LatticePoint3 p)
    {
        (long high, long low) = Dot(Nx, Ny, Nz, p.X - Anchor.X, p.Y - Anchor.Y, p.Z - Anchor.Z);
        return ((Int128)high << LowBits) + low;
    }

    /// <summary>Sign of N·d, for normal components of up to 52 bits and differences of up to 26.</summary>
    public static int DotSign(long nx, long ny, long nz, int dx, int dy, int dz)
    {
        (long high, long low) = Dot(nx, ny, nz, dx, dy, dz);
        high += low >> LowBits;
        return high != 0 ? Math.Sign(high) : (low & LowMask) != 0 ? 1 : 0;
    }

    // N·d = high·2^26 + low: components are cut into 26 bits and the rest, so that every product and sum fits 64 bits.
    private static (long High, long Low) Dot(long nx, long ny, long nz, long dx, long dy, long dz) => (
        ((nx >> LowBits) * dx) + ((ny >> LowBits) * dy) + ((nz >> LowBits) * dz),
        ((nx & LowMask) * dx) + ((ny & LowMask) * dy) + ((nz & LowMask) * dz));

    /// <summary>1 in front, -1 behind, 0 in the plane. Doubles decide unless the value is within their rounding of zero.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public int Side(LatticePoint3 p)
    {
        double x = (double)Nx * (p.X - Anchor.X);
        double y = (double)Ny * (p.Y - Anchor.Y);
        double z = (double)Nz * (p.Z - Anchor.Z);
        double value = x + y + z;
        double size = Math.Abs(x) + Math.Abs(y) + Math.Abs(z);

        // Below 2^53 every step was exact; above, three products and two sums err by less than 2^-50 of the size.
        if (size < 9007199254740992.0 || Math.Abs(value) > size * Tolerances.ThreeProductShare)
        {
            return value > 0 ? 1 : value < 0 ? -1 : 0;
        }

        return DotSign(Nx, Ny, Nz, p.X - Anchor.X, p.Y - Anchor.Y, p.Z - Anchor.Z);
    }

    /// <summary>Exact scalar product of the normals' directions, as a sign.</summary>
    public static int NormalDotSign(in Plane a, in Plane b)
    {
        double x = (double)a.Nx * b.Nx, y = (double)a.Ny * b.Ny, z = (double)a.Nz * b.Nz;
        double value = x + y + z;
        if (Math.Abs(value) > (Math.Abs(x) + Math.Abs(y) + Math.Abs(z)) * Tolerances.ThreeProductShare)
        {
            return value > 0 ? 1 : -1;
        }

        return Int128.Sign(((Int128)a.Nx * b.Nx) + ((Int128)a.Ny * b.Ny) + ((Int128)a.Nz * b.Nz));
    }

    /// <summary>
    /// An axis along which the planes' common line runs, and whether the product of the normals runs up (1) or down (-1) it; 0 when they
    /// are parallel.
    /// </summary>
    public static (int Axis, int Sense) CrossSense(in Plane a, in Plane b)
    {
        double x1 = (double)a.Ny * b.Nz, x2 = (double)a.Nz * b.Ny, y1 = (double)a.Nz * b.Nx, y2 = (double)a.Nx * b.Nz;
        double z1 = (double)a.Nx * b.Ny, z2 = (double)a.Ny * b.Nx;
        double x = x1 - x2, y = y1 - y2, z = z1 - z2;
        double ax = Math.Abs(x), ay = Math.Abs(y), az = Math.Abs(z);
        int axis = ax >= ay && ax >= az ? 0 : ay >= az ? 1 : 2;
        double value = axis == 0 ? x : axis == 1 ? y : z;
        double size = axis == 0 ? Math.Abs(x1) + Math.Abs(x2) : axis == 1 ? Math.Abs(y1) + Math.Abs(y2) : Math.Abs(z1) + Math.Abs(z2);
        if (Math.Abs(value) > size * Tolerances.ThreeProductShare)
        {
            return (axis, Math.Sign(value));
        }

        (Int128 X, Int128 Y, Int128 Z) cross = NormalCross(a, b);
        Int128 exactX = Int128.Abs(cross.X), exactY = Int128.Abs(cross.Y), exactZ = Int128.Abs(cross.Z);
        axis = exactX >= exactY && exactX >= exactZ ? 0 : exactY >= exactZ ? 1 : 2;
        return (axis, Int128.Sign(axis == 0 ? cross.X : axis == 1 ? cross.Y : cross.Z));
    }

    /// <summary>Exact product of the normals, 104 bits a component: the direction of the planes' common line.</summary>
    public static (Int128 X, Int128 Y, Int128 Z) NormalCross(in Plane a, in Plane b) => (
        Math.BigMul(a.Ny, b.Nz) - Math.BigMul(a.Nz, b.Ny),
        Math.BigMul(a.Nz, b.Nx) - Math.BigMul(a.Nx, b.Nz),
        Math.BigMul(a.Nx, b.Ny) - Math.BigMul(a.Ny, b.Nx));
}

/// <summary>
/// Which two coordinates a plane is drawn in: an axis that the normal leans to is dropped, and the other two are ordered so
/// that counter-clockwise in the drawing is counter-clockwise seen from the plane's front.
/// </summary>
internal readonly struct Drawing
{
    public readonly int U;
    public readonly int V;

    /// <summary>Whether the drawing shows the plane's front with its axes in cyclic order; else they are exchanged.</summary>
    public readonly bool IsForward;

    public Drawing(in Plane plane)
    {
        // An axis is taken when the normal leans to it by at least 3/4 of the most: planes that are nearly the same, at 45 degrees
        // for instance, are then drawn alike.
        double x = Math.Abs((double)plane.Nx), y = Math.Abs((double)plane.Ny), z = Math.Abs((double)plane.Nz);
        double enough = 0.75 * Math.Max(x, Math.Max(y, z));
        (int u, int v, bool forward) = z >= enough ? (0, 1, plane.Nz > 0) : x >= enough ? (1, 2, plane.Nx > 0) : (2, 0, plane.Ny > 0);
        IsForward = forward;
        U = forward ? u : v;
        V = forward ? v : u;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static int Pick(LatticePoint3 p, int axis) => axis == 0 ? p.X : axis == 1 ? p.Y : p.Z;

    /// <summary>Twice the signed area of (a, b, c) as drawn, 52 bits with sign.</summary>
    public long Orient(LatticePoint3 a, LatticePoint3 b, LatticePoint3 c)
    {
        long au = Pick(a, U), av = Pick(a, V);
        return ((Pick(b, U) - au) * (Pick(c, V) - av)) - ((Pick(b, V) - av) * (Pick(c, U) - au));
    }
}
