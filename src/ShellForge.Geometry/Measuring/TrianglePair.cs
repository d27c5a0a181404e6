using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Measuring;

/// <summary>Two triangles in space: where they are nearest to each other.</summary>
internal static class TrianglePair
{
    /// <summary>
    /// The nearest places. Apart, the least distance is that of a corner to the other triangle or of two edges; crossing triangles
    /// have an edge of one through the other, found by exact signs. Triangles that share a point have distance 0 up to rounding.
    /// </summary>
    public static (double Square, Point3 OnFirst, Point3 OnSecond) Nearest(in Triangle3 a, in Triangle3 b)
    {
        (double Square, Point3 OnFirst, Point3 OnSecond) best = (double.PositiveInfinity, default, default);
        Corner(a.A, b, false, ref best);
        Corner(a.B, b, false, ref best);
        Corner(a.C, b, false, ref best);
        Corner(b.A, a, true, ref best);
        Corner(b.B, a, true, ref best);
        Corner(b.C, a, true, ref best);
        Edge(a.A, a.B, b, ref best);
        Edge(a.B, a.C, b, ref best);
        Edge(a.C, a.A, b, ref best);
        if (best.Square > 0 && Crossing(a, b) is { } common)
        {
            best = (0, common, common);
        }

        return best;
    }

    private static void Corner(in Point3 p, in Triangle3 t, bool swapped, ref (double Square, Point3 OnFirst, Point3 OnSecond) best)
    {
        Point3 near = t.Nearest(p);
        Point3 way = near - p;
        double square = Point3.Dot(way, way);
        if (square < best.Square)
        {
            best = swapped ? (square, near, p) : (square, p, near);
        }
    }

    private static void Edge(in Point3 p, in Point3 q, in Triangle3 t, ref (double Square, Point3 OnFirst, Point3 OnSecond) best)
    {
        Edges(p, q, t.A, t.B, ref best);
        Edges(p, q, t.B, t.C, ref best);
        Edges(p, q, t.C, t.A, ref best);
    }

    // Only pairs of inner points matter here: ends are corners, and those were asked before.
    private static void Edges(
        in Point3 p, in Point3 q, in Point3 u, in Point3 w, ref (double Square, Point3 OnFirst, Point3 OnSecond) best)
    {
        Point3 d = q - p;
        Point3 e = w - u;
        Point3 r = p - u;
        double dd = Point3.Dot(d, d);
        double ee = Point3.Dot(e, e);
        double de = Point3.Dot(d, e);
        double dr = Point3.Dot(d, r);
        double er = Point3.Dot(e, r);
        double whole = (dd * ee) - (de * de);
        if (whole <= 0)
        {
            return;
        }

        double s = ((de * er) - (ee * dr)) / whole;
        double t = ((dd * er) - (de * dr)) / whole;
        if (s is >= 0 and <= 1 && t is >= 0 and <= 1)
        {
            Point3 onFirst = p + (s * d);
            Point3 onSecond = u + (t * e);
            Point3 way = onSecond - onFirst;
            double square = Point3.Dot(way, way);
            if (square < best.Square)
            {
                best = (square, onFirst, onSecond);
            }
        }
    }

    private static Point3? Crossing(in Triangle3 a, in Triangle3 b) =>
        Through(a.A, a.B, b) ?? Through(a.B, a.C, b) ?? Through(a.C, a.A, b)
        ?? Through(b.A, b.B, a) ?? Through(b.B, b.C, a) ?? Through(b.C, b.A, a);

    private static Point3? Through(in Point3 p, in Point3 q, in Triangle3 t)
    {
        int atP = FloatingOrientation.Sign3(t.A, t.B, t.C, p);
        int atQ = FloatingOrientation.Sign3(t.A, t.B, t.C, q);
        if (atP * atQ >= 0)
        {
            return null; // an end in the plane is a corner that was asked before
        }

        int ab = FloatingOrientation.Sign3(p, q, t.A, t.B);
        int bc = FloatingOrientation.Sign3(p, q, t.B, t.C);
        int ca = FloatingOrientation.Sign3(p, q, t.C, t.A);
        if (ab * bc < 0 || bc * ca < 0 || ca * ab < 0)
        {
            return null;
        }

        Point3 n = t.DoubleNormal;
        double fromP = Math.Abs(Point3.Dot(n, p - t.A));
        double fromQ = Math.Abs(Point3.Dot(n, q - t.A));
        return fromP + fromQ == 0 ? p : p + ((fromP / (fromP + fromQ)) * (q - p));
    }
}
