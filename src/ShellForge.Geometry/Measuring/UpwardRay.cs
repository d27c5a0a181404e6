using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Measuring;

/// <summary>
/// The ray from a point along +z against triangles, exactly. The point is thought moved by two infinitely small steps along x
/// and, much smaller, y, so that the ray never meets an edge or a corner and each surface is crossed or it isn't.
/// </summary>
internal static class UpwardRay<TOrientation>
    where TOrientation : struct, IOrientation
{
    /// <summary>+1 when the ray leaves through the triangle's outer side, -1 when it comes in through it, 0 when it misses it.</summary>
    public static int Crossing(in Point3 p, in Point3 a, in Point3 b, in Point3 c)
    {
        bool aAbove = a.Y > p.Y;
        bool bAbove = b.Y > p.Y;
        bool cAbove = c.Y > p.Y;
        if (aAbove == bAbove && bAbove == cAbove)
        {
            return 0;
        }

        bool inside = (aAbove != bAbove && IsLeftOf(p, a, b, aAbove))
            ^ (bAbove != cAbove && IsLeftOf(p, b, c, bAbove))
            ^ (cAbove != aAbove && IsLeftOf(p, c, a, cAbove));
        if (!inside)
        {
            return 0;
        }

        int looksUp = TOrientation.Sign2(a.X, a.Y, b.X, b.Y, c.X, c.Y);
        return TOrientation.Sign3(a, b, c, p) * looksUp < 0 ? looksUp : 0;
    }

    // Whether the point lies strictly left of the edge, seen up along y; on it, the step along +x has taken it to the right.
    private static bool IsLeftOf(in Point3 p, in Point3 u, in Point3 w, bool startsAbove)
    {
        int sign = TOrientation.Sign2(u.X, u.Y, w.X, w.Y, p.X, p.Y);
        return startsAbove ? sign < 0 : sign > 0;
    }
}
