namespace ShellForge.Geometry.Numerics;

/// <summary>
/// Exact signs for any doubles whose products neither overflow nor underflow (float32 values never do): plain arithmetic with
/// a proven error bound first, expansions where that can't tell. Source of the bounds: Shewchuk 1997.
/// </summary>
internal readonly struct FloatingOrientation : IOrientation
{
    /// <summary>The largest relative error of one rounding: half a unit in the last place of 1.</summary>
    public const double Unit = 1.0 / (1L << 53);

    /// <summary>The most terms that <see cref="SixVolumes"/> gives.</summary>
    public const int VolumeTerms = 192;

    private const double Bound2 = (3 + (16 * Unit)) * Unit;
    private const double Bound3 = (7 + (56 * Unit)) * Unit;

    /// <inheritdoc/>
    public static int Sign3(in Point3 a, in Point3 b, in Point3 c, in Point3 d)
    {
        Point3 p = a - d;
        Point3 q = b - d;
        Point3 r = c - d;
        double qxry = q.X * r.Y;
        double rxqy = r.X * q.Y;
        double rxpy = r.X * p.Y;
        double pxry = p.X * r.Y;
        double pxqy = p.X * q.Y;
        double qxpy = q.X * p.Y;

        // Positive when d lies below a, b, c seen counter-clockwise, which is the other way round.
        double volume = (p.Z * (qxry - rxqy)) + (q.Z * (rxpy - pxry)) + (r.Z * (pxqy - qxpy));
        double permanent = ((Math.Abs(qxry) + Math.Abs(rxqy)) * Math.Abs(p.Z))
            + ((Math.Abs(rxpy) + Math.Abs(pxry)) * Math.Abs(q.Z))
            + ((Math.Abs(pxqy) + Math.Abs(qxpy)) * Math.Abs(r.Z));
        double bound = Bound3 * permanent;
        return volume > bound ? -1 : volume < -bound ? 1 : Exact3(a, b, c, d);
    }

    /// <inheritdoc/>
    public static int Sign2(double ax, double ay, double bx, double by, double cx, double cy)
    {
        double left = (ax - cx) * (by - cy);
        double right = (ay - cy) * (bx - cx);
        double area = left - right;
        double bound = Bound2 * (Math.Abs(left) + Math.Abs(right));
        return area > bound ? 1 : area < -bound ? -1 : Exact2(ax, ay, bx, by, cx, cy);
    }

    /// <summary>
    /// Six times the volume of a tetrahedron as an expansion, positive when d lies on the side to which a, b, c look
    /// counter-clockwise; returns how many terms it has.
    /// </summary>
    public static int SixVolumes(in Point3 a, in Point3 b, in Point3 c, in Point3 d, Span<double> result)
    {
        Span<double> nx = stackalloc double[64];
        Span<double> ny = stackalloc double[64];
        Span<double> nz = stackalloc double[64];
        Span<double> xy = stackalloc double[128];
        int x = Term(new Point2(a.Y, a.Z), new Point2(b.Y, b.Z), new Point2(c.Y, c.Z), (a.X, d.X), nx);
        int y = Term(new Point2(a.Z, a.X), new Point2(b.Z, b.X), new Point2(c.Z, c.X), (a.Y, d.Y), ny);
        int z = Term(new Point2(a.X, a.Y), new Point2(b.X, b.Y), new Point2(c.X, c.Y), (a.Z, d.Z), nz);
        int sum = Expansion.Sum(nx[..x], ny[..y], minus: false, xy);
        return Expansion.Sum(xy[..sum], nz[..z], minus: false, result);
    }

    private static int Exact2(double ax, double ay, double bx, double by, double cx, double cy)
    {
        Span<double> area = stackalloc double[16];
        int count = Cross(new Point2(cx, cy), new Point2(ax, ay), new Point2(bx, by), area);
        return Expansion.Sign(area[..count]);
    }

    private static int Exact3(in Point3 a, in Point3 b, in Point3 c, in Point3 d)
    {
        Span<double> volume = stackalloc double[VolumeTerms];
        return Expansion.Sign(volume[..SixVolumes(a, b, c, d, volume)]);
    }

    // The cross product of b and c seen from a, times a height.
    private static int Term(in Point2 a, in Point2 b, in Point2 c, (double From, double To) rise, Span<double> result)
    {
        Span<double> area = stackalloc double[16];
        Span<double> height = stackalloc double[2];
        int areaCount = Cross(a, b, c, area);
        int heightCount = Expansion.Difference(rise.To, rise.From, height);
        return Expansion.Product(area[..areaCount], height[..heightCount], result);
    }

    // The cross product of b and c seen from a: (bx - ax)(cy - ay) - (by - ay)(cx - ax).
    private static int Cross(in Point2 a, in Point2 b, in Point2 c, Span<double> result)
    {
        Span<double> first = stackalloc double[8];
        Span<double> second = stackalloc double[8];
        return Expansion.Sum(
            first[..DifferenceProduct(b.X, a.X, c.Y, a.Y, first)], second[..DifferenceProduct(b.Y, a.Y, c.X, a.X, second)], minus: true,
            result);
    }

    private static int DifferenceProduct(double a, double b, double c, double d, Span<double> result)
    {
        Span<double> first = stackalloc double[2];
        Span<double> second = stackalloc double[2];
        return Expansion.Product(
            first[..Expansion.Difference(a, b, first)], second[..Expansion.Difference(c, d, second)], result);
    }
}
