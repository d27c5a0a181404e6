using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Auditing;

/// <summary>How two triangles meet.</summary>
internal enum Meeting
{
    /// <summary>Not at all, or in just the corner or edge that they share.</summary>
    Proper,

    /// <summary>Elsewhere, in different planes.</summary>
    Crossing,

    /// <summary>Elsewhere, in one plane.</summary>
    Overlapping,
}

/// <summary>
/// Whether two triangles, neither degenerate, meet outside a common corner or edge; borders count. Every answer is a sign of an
/// exact volume or area.
/// </summary>
internal static class TriangleMeeting<TOrientation>
    where TOrientation : struct, IOrientation
{
    /// <summary>Triangles without a common corner.</summary>
    public static Meeting Apart(in Point3 a, in Point3 b, in Point3 c, in Point3 p, in Point3 q, in Point3 r)
    {
        int sp = TOrientation.Sign3(a, b, c, p);
        int sq = TOrientation.Sign3(a, b, c, q);
        int sr = TOrientation.Sign3(a, b, c, r);
        if (sp == sq && sq == sr)
        {
            return sp != 0 ? Meeting.Proper : InPlane(a, b, c, p, q, r) ? Meeting.Overlapping : Meeting.Proper;
        }

        int sa = TOrientation.Sign3(p, q, r, a);
        int sb = TOrientation.Sign3(p, q, r, b);
        int sc = TOrientation.Sign3(p, q, r, c);
        if (sa == sb && sb == sc)
        {
            return Meeting.Proper;
        }

        Corner atP = new(p, sp), atQ = new(q, sq), atR = new(r, sr), atA = new(a, sa), atB = new(b, sb), atC = new(c, sc);
        bool meet = SegmentMeets(atP, atQ, a, b, c) || SegmentMeets(atQ, atR, a, b, c) || SegmentMeets(atR, atP, a, b, c)
            || SegmentMeets(atA, atB, p, q, r) || SegmentMeets(atB, atC, p, q, r) || SegmentMeets(atC, atA, p, q, r);
        return meet ? Meeting.Crossing : Meeting.Proper;
    }

    /// <summary>
    /// Triangles v, a, b and v, c, d with the corner v in common. Both are convex and hold v: more than v is common exactly when
    /// the side opposite v of one meets the other.
    /// </summary>
    public static Meeting AtCorner(in Point3 v, in Point3 a, in Point3 b, in Point3 c, in Point3 d)
    {
        int sc = TOrientation.Sign3(v, a, b, c);
        int sd = TOrientation.Sign3(v, a, b, d);
        if (sc * sd > 0)
        {
            return Meeting.Proper;
        }

        if (sc == 0 && sd == 0)
        {
            int axis = FlatAxis(v, a, b);
            return SegmentMeetsInPlane(axis, c, d, v, a, b) || SegmentMeetsInPlane(axis, a, b, v, c, d)
                ? Meeting.Overlapping
                : Meeting.Proper;
        }

        int sa = TOrientation.Sign3(v, c, d, a);
        int sb = TOrientation.Sign3(v, c, d, b);
        if (sa * sb > 0)
        {
            return Meeting.Proper;
        }

        return SegmentMeets(new(c, sc), new(d, sd), v, a, b) || SegmentMeets(new(a, sa), new(b, sb), v, c, d)
            ? Meeting.Crossing : Meeting.Proper;
    }

    /// <summary>Triangles with the edge u, v in common and the third corners c and d: folded onto each other or not.</summary>
    public static Meeting AtEdge(in Point3 u, in Point3 v, in Point3 c, in Point3 d)
    {
        if (TOrientation.Sign3(u, v, c, d) != 0)
        {
            return Meeting.Proper;
        }

        int axis = FlatAxis(u, v, c);
        return Sign(axis, u, v, c) == Sign(axis, u, v, d) ? Meeting.Overlapping : Meeting.Proper;
    }

    /// <summary>Whether three corners lie on one line.</summary>
    public static bool IsFlat(in Point3 a, in Point3 b, in Point3 c) =>
        Sign(0, a, b, c) == 0 && Sign(1, a, b, c) == 0 && Sign(2, a, b, c) == 0;

    // A corner, and on which side of the other triangle's plane it lies.
    private readonly record struct Corner(Point3 At, int Side);

    // Segment against triangle, borders included.
    private static bool SegmentMeets(in Corner from, in Corner to, in Point3 a, in Point3 b, in Point3 c)
    {
        (Point3 p, Point3 q) = (from.At, to.At);
        if (from.Side * to.Side > 0)
        {
            return false;
        }

        if (from.Side == 0 && to.Side == 0)
        {
            return SegmentMeetsInPlane(FlatAxis(a, b, c), p, q, a, b, c);
        }

        int x = TOrientation.Sign3(p, q, a, b);
        int y = TOrientation.Sign3(p, q, b, c);
        if (x * y < 0)
        {
            return false;
        }

        int z = TOrientation.Sign3(p, q, c, a);
        return (x >= 0 && y >= 0 && z >= 0) || (x <= 0 && y <= 0 && z <= 0);
    }

    private static bool InPlane(in Point3 a, in Point3 b, in Point3 c, in Point3 p, in Point3 q, in Point3 r)
    {
        int axis = FlatAxis(a, b, c);
        return SegmentMeetsInPlane(axis, p, q, a, b, c) || SegmentMeetsInPlane(axis, q, r, a, b, c)
            || SegmentMeetsInPlane(axis, r, p, a, b, c) || IsInside(axis, a, p, q, r);
    }

    private static bool SegmentMeetsInPlane(int axis, in Point3 p, in Point3 q, in Point3 a, in Point3 b, in Point3 c) =>
        IsInside(axis, p, a, b, c) || IsInside(axis, q, a, b, c)
        || SegmentsMeet(axis, p, q, a, b) || SegmentsMeet(axis, p, q, b, c) || SegmentsMeet(axis, p, q, c, a);

    private static bool IsInside(int axis, in Point3 p, in Point3 a, in Point3 b, in Point3 c)
    {
        int x = Sign(axis, a, b, p);
        int y = Sign(axis, b, c, p);
        int z = Sign(axis, c, a, p);
        return (x >= 0 && y >= 0 && z >= 0) || (x <= 0 && y <= 0 && z <= 0);
    }

    private static bool SegmentsMeet(int axis, in Point3 p, in Point3 q, in Point3 a, in Point3 b)
    {
        int sa = Sign(axis, p, q, a);
        int sb = Sign(axis, p, q, b);
        int sp = Sign(axis, a, b, p);
        int sq = Sign(axis, a, b, q);
        if (sa == 0 && sb == 0)
        {
            return RangesMeet(p.X, q.X, a.X, b.X) && RangesMeet(p.Y, q.Y, a.Y, b.Y) && RangesMeet(p.Z, q.Z, a.Z, b.Z);
        }

        return sa * sb <= 0 && sp * sq <= 0;
    }

    private static bool RangesMeet(double a, double b, double c, double d) =>
        Math.Max(a, b) >= Math.Min(c, d) && Math.Max(c, d) >= Math.Min(a, b);

    // The axis to leave out so that the triangle keeps an area.
    private static int FlatAxis(in Point3 a, in Point3 b, in Point3 c) =>
        Sign(2, a, b, c) != 0 ? 2 : Sign(1, a, b, c) != 0 ? 1 : 0;

    private static int Sign(int axis, in Point3 a, in Point3 b, in Point3 c) => axis switch
    {
        0 => TOrientation.Sign2(a.Y, a.Z, b.Y, b.Z, c.Y, c.Z),
        1 => TOrientation.Sign2(a.Z, a.X, b.Z, b.X, c.Z, c.X),
        _ => TOrientation.Sign2(a.X, a.Y, b.X, b.Y, c.X, c.Y),
    };
}
