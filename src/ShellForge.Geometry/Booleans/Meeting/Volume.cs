using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans.Meeting;

/// <summary>On which side of a plane through three lattice points a fourth lies, as far as doubles can tell.</summary>
internal static class Volume
{
    /// <summary>
    /// Sign of the volume of p, q, r, s; 0 when doubles cannot tell. The product of two differences of at most 2^25 is exact.
    /// </summary>
    public static int Sign(LatticePoint3 p, LatticePoint3 q, LatticePoint3 r, LatticePoint3 s)
    {
        double ux = q.X - p.X, uy = q.Y - p.Y, uz = q.Z - p.Z;
        double vx = r.X - p.X, vy = r.Y - p.Y, vz = r.Z - p.Z;
        double x = ((uy * vz) - (uz * vy)) * (s.X - p.X), y = ((uz * vx) - (ux * vz)) * (s.Y - p.Y), z = ((ux * vy) - (uy * vx))
            * (s.Z - p.Z);
        double volume = x + y + z, bound = (Math.Abs(x) + Math.Abs(y) + Math.Abs(z)) * Tolerances.ThreeProductShare;
        return volume > bound ? 1 : volume < -bound ? -1 : 0;
    }
}
