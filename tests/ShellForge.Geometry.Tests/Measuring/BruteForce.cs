using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Testing;

namespace ShellForge.Geometry.Tests.Measuring;

/// <summary>Answers by asking every triangle, with other formulas than the queries use: slow, and without a tree.</summary>
internal static class BruteForce
{
    public static IEnumerable<(Point3 A, Point3 B, Point3 C)> Triangles(Mesh mesh)
    {
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            yield return (
                mesh.Vertices[mesh.Triangles[3 * t]].ToMillimetres(),
                mesh.Vertices[mesh.Triangles[(3 * t) + 1]].ToMillimetres(),
                mesh.Vertices[mesh.Triangles[(3 * t) + 2]].ToMillimetres());
        }
    }

    public static double Distance(Mesh mesh, Point3 p) => Triangles(mesh).Min(t => Distance(t.A, t.B, t.C, p));

    /// <summary>Foot on the plane if it falls into the triangle by its three heights, else the nearest of the three sides.</summary>
    public static double Distance(Point3 a, Point3 b, Point3 c, Point3 p)
    {
        Point3 n = Point3.Cross(b - a, c - a);
        Point3 foot = p - ((Point3.Dot(n, p - a) / Point3.Dot(n, n)) * n);
        bool inside = Point3.Dot(n, Point3.Cross(b - a, foot - a)) >= 0
            && Point3.Dot(n, Point3.Cross(c - b, foot - b)) >= 0
            && Point3.Dot(n, Point3.Cross(a - c, foot - c)) >= 0;
        return inside ? Point3.Distance(foot, p) : Math.Min(ToSegment(a, b, p), Math.Min(ToSegment(b, c, p), ToSegment(c, a, p)));
    }

    public static double ToSegment(Point3 a, Point3 b, Point3 p)
    {
        double share = Math.Clamp(Point3.Dot(p - a, b - a) / Point3.Dot(b - a, b - a), 0, 1);
        return Point3.Distance(a + (share * (b - a)), p);
    }

    /// <summary>Distance of two segments: the distance to one is convex along the other, so thirds close in on it.</summary>
    public static double BetweenSegments(Point3 a, Point3 b, Point3 c, Point3 d)
    {
        double low = 0;
        double high = 1;
        for (int i = 0; i < 120; i++)
        {
            double one = low + ((high - low) / 3);
            double two = high - ((high - low) / 3);
            if (ToSegment(c, d, a + (one * (b - a))) <= ToSegment(c, d, a + (two * (b - a))))
            {
                high = two;
            }
            else
            {
                low = one;
            }
        }

        return ToSegment(c, d, a + (((low + high) / 2) * (b - a)));
    }

    /// <summary>Distance of two surfaces; 0 where triangles have a point in common by rational arithmetic.</summary>
    public static double Distance(Mesh first, Mesh second)
    {
        double best = double.PositiveInfinity;
        foreach ((Point3 a, Point3 b, Point3 c) in Triangles(first))
        {
            foreach ((Point3 d, Point3 e, Point3 f) in Triangles(second))
            {
                best = Math.Min(best, Distance((a, b, c), (d, e, f)));
            }
        }

        return best;
    }

    /// <summary>Whether a point is inside, by the solid angle that the surface fills as seen from it.</summary>
    public static bool IsInside(Mesh mesh, Point3 p)
    {
        double angle = 0;
        foreach ((Point3 a, Point3 b, Point3 c) in Triangles(mesh))
        {
            Point3 u = a - p, v = b - p, w = c - p;
            double lu = u.Length, lv = v.Length, lw = w.Length;
            double above = Point3.Dot(u, Point3.Cross(v, w));
            double below = (lu * lv * lw) + (Point3.Dot(u, v) * lw) + (Point3.Dot(v, w) * lu) + (Point3.Dot(w, u) * lv);
            angle += 2 * Math.Atan2(above, below);
        }

        return angle > 2 * Math.PI;
    }

    private static double Distance((Point3 A, Point3 B, Point3 C) s, (Point3 A, Point3 B, Point3 C) t)
    {
        Point3[] p = [s.A, s.B, s.C];
        Point3[] q = [t.A, t.B, t.C];
        double best = Math.Min(p.Min(x => Distance(t.A, t.B, t.C, x)), q.Min(x => Distance(s.A, s.B, s.C, x)));
        for (int i = 0; i < 3; i++)
        {
            for (int k = 0; k < 3; k++)
            {
                best = Math.Min(best, BetweenSegments(p[i], p[(i + 1) % 3], q[k], q[(k + 1) % 3]));
            }
        }

        bool boxesMeet = p.Min(x => x.X) <= q.Max(x => x.X) && q.Min(x => x.X) <= p.Max(x => x.X)
            && p.Min(x => x.Y) <= q.Max(x => x.Y) && q.Min(x => x.Y) <= p.Max(x => x.Y)
            && p.Min(x => x.Z) <= q.Max(x => x.Z) && q.Min(x => x.Z) <= p.Max(x => x.Z);
        return boxesMeet && Exact(s).Common(Exact(t)).Count > 0 ? 0 : best;
    }

    private static RationalTriangle Exact((Point3 A, Point3 B, Point3 C) t) =>
        new(RationalPoint.From(t.A), RationalPoint.From(t.B), RationalPoint.From(t.C));
}
