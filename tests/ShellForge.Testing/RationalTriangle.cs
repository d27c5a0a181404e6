namespace ShellForge.Testing;

/// <summary>
/// A triangle of exact points, and what two of them have in common, found by cutting one down to the other: no case
/// distinction, and no line shared with any audit.
/// </summary>
public sealed record RationalTriangle(RationalPoint A, RationalPoint B, RationalPoint C)
{
    public IReadOnlyList<RationalPoint> Corners => [A, B, C];

    public RationalPoint Normal => RationalPoint.Cross(B - A, C - A);

    public bool IsDegenerate => Normal.IsZero;

    /// <summary>Corners of the convex set that two triangles have in common; empty when they are apart.</summary>
    public IReadOnlyList<RationalPoint> Common(RationalTriangle other)
    {
        RationalPoint n = other.Normal;
        IReadOnlyList<RationalPoint> rest = Cut(Corners, n, other.A);
        rest = Cut(rest, new RationalPoint(-n.X, -n.Y, -n.Z), other.A);
        rest = Cut(rest, RationalPoint.Cross(n, other.B - other.A), other.A);
        rest = Cut(rest, RationalPoint.Cross(n, other.C - other.B), other.B);
        return [.. Cut(rest, RationalPoint.Cross(n, other.A - other.C), other.C).Distinct()];
    }

    /// <summary>Whether two triangles meet in a common corner or edge only, or not at all.</summary>
    public bool MeetsProperly(RationalTriangle other)
    {
        RationalPoint[] shared = [.. Corners.Intersect(other.Corners)];
        IReadOnlyList<RationalPoint> common = Common(other);
        return shared.Length switch
        {
            0 => common.Count == 0,
            1 => common.All(p => p == shared[0]),
            2 => common.All(p => RationalPoint.Cross(shared[1] - shared[0], p - shared[0]).IsZero
                && RationalPoint.Dot(shared[0] - p, shared[1] - p).Sign <= 0),
            _ => false,
        };
    }

    // The part of a convex polygon on the side of a plane to which a normal points, the plane included.
    private static List<RationalPoint> Cut(IReadOnlyList<RationalPoint> polygon, RationalPoint normal, RationalPoint at)
    {
        var kept = new List<RationalPoint>();
        for (int i = 0; i < polygon.Count; i++)
        {
            RationalPoint p = polygon[i];
            RationalPoint q = polygon[(i + 1) % polygon.Count];
            Rational hp = RationalPoint.Dot(normal, p - at);
            Rational hq = RationalPoint.Dot(normal, q - at);
            if (hp.Sign >= 0)
            {
                kept.Add(p);
            }

            if (hp.Sign * hq.Sign < 0)
            {
                kept.Add(p + ((hp / (hp - hq)) * (q - p)));
            }
        }

        return kept;
    }
}
