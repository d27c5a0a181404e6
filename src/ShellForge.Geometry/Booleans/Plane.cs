using System.Runtime.CompilerServices;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans;

/// <summary>
/// The oriented plane through three lattice points: normal components of at most 52 bits with sign, exact both as long and as
/// double, and one of the points. The front is where the three run counter-clockwise.
/// </summary>
internal readonly struct Plane
{
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
    public Int128 Offset => ((Int128)Nx * Anchor.X) + ((Int128)Ny * Anchor.Y) + ((Int128)Nz * Anchor.Z);

    public Plane Flipped() => new(-Nx, -Ny, -Nz, Anchor);

    /// <summary>Exact N·(p - anchor), 78 bits with sign.</summary>
    public Int128 Height(LatticePoint3 p) =>
        ((Int128)Nx * (p.X - Anchor.X)) + ((Int128)Ny * (p.Y - Anchor.Y)) + ((Int128)Nz * (p.Z - Anchor.Z));

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

        return Int128.Sign(Height(p));
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

    /// <summary>Exact product of the normals, 104 bits a component: the direction of the planes' common line.</summary>
    public static (Int128 X, Int128 Y, Int128 Z) NormalCross(in Plane a, in Plane b) => (
        ((Int128)a.Ny * b.Nz) - ((Int128)a.Nz * b.Ny),
        ((Int128)a.Nz * b.Nx) - ((Int128)a.Nx * b.Nz),
        ((Int128)a.Nx * b.Ny) - ((Int128)a.Ny * b.Nx));
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
