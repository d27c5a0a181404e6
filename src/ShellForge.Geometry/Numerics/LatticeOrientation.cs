namespace ShellForge.Geometry.Numerics;

/// <summary>
/// Exact signs for coordinates that are whole counts within ±2^24, held in doubles. Differences have 25 bits and a sign, so
/// products of two and their difference (51 bits) are exact in double; a volume has 77 bits and is not. Its double value errs by
/// less than 2^26, so beyond that its sign is sure; below, the true value is so small that 64-bit integers which wrap around
/// come out at it exactly.
/// </summary>
internal readonly struct LatticeOrientation : IOrientation
{
    private const double Sure = 1L << 26;

    /// <inheritdoc/>
    public static int Sign3(in Point3 a, in Point3 b, in Point3 c, in Point3 d)
    {
        double bx = b.X - a.X;
        double by = b.Y - a.Y;
        double bz = b.Z - a.Z;
        double cx = c.X - a.X;
        double cy = c.Y - a.Y;
        double cz = c.Z - a.Z;
        double dx = d.X - a.X;
        double dy = d.Y - a.Y;
        double dz = d.Z - a.Z;
        double nx = (by * cz) - (bz * cy);
        double ny = (bz * cx) - (bx * cz);
        double nz = (bx * cy) - (by * cx);
        double volume = (nx * dx) + (ny * dy) + (nz * dz);
        if (volume > Sure)
        {
            return 1;
        }

        if (volume < -Sure)
        {
            return -1;
        }

        return long.Sign(unchecked(((long)nx * (long)dx) + ((long)ny * (long)dy) + ((long)nz * (long)dz)));
    }

    /// <inheritdoc/>
    public static int Sign2(double ax, double ay, double bx, double by, double cx, double cy) =>
        Math.Sign(((bx - ax) * (cy - ay)) - ((by - ay) * (cx - ax)));
}
