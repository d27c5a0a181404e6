using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Planar;

/// <summary>Measures of one closed polygon, given by its corners without repeating the first.</summary>
internal static class Loop
{
    /// <summary>
    /// Area in mm2, positive when counter-clockwise. Taken about the first corner, so that far from the origin nothing cancels.
    /// </summary>
    public static double SignedArea(IReadOnlyList<Point2> corners)
    {
        double twice = 0;
        for (int i = 1; i + 1 < corners.Count; i++)
        {
            twice += Point2.Cross(corners[i] - corners[0], corners[i + 1] - corners[0]);
        }

        return twice / 2;
    }

    /// <summary>
    /// The same polygon in the one order that stands for it: no corner repeated or on the straight line between its
    /// neighbours (except those that must stay), the given direction, and the smallest corner (by x, then y) first. Corners must
    /// lie on the lattice.
    /// </summary>
    public static ImmutableArray<Point2> Canonical(
        IReadOnlyList<Point2> corners, bool counterClockwise, IReadOnlySet<Point2> staying)
    {
        List<Point2> kept = WithoutStraightCorners(corners, staying);
        if (kept.Count < 3)
        {
            return [];
        }

        if (SignedArea(kept) > 0 != counterClockwise)
        {
            kept.Reverse();
        }

        return FromSmallest(kept);
    }

    /// <summary>The same loop begun at its smallest corner (by x, then y).</summary>
    public static ImmutableArray<Point2> FromSmallest(IReadOnlyList<Point2> corners)
    {
        int first = 0;
        for (int i = 1; i < corners.Count; i++)
        {
            if (IsBefore(corners[i], corners[first]))
            {
                first = i;
            }
        }

        var ordered = ImmutableArray.CreateBuilder<Point2>(corners.Count);
        for (int i = 0; i < corners.Count; i++)
        {
            ordered.Add(corners[(first + i) % corners.Count]);
        }

        return ordered.MoveToImmutable();
    }

    /// <summary>Whether a lattice point that is not on the loop lies in it.</summary>
    public static bool Encloses(IReadOnlyList<Point2> corners, Point2 p)
    {
        bool encloses = false;
        for (int i = 0; i < corners.Count; i++)
        {
            Point2 a = corners[i];
            Point2 b = corners[i + 1 == corners.Count ? 0 : i + 1];
            if ((a.Y > p.Y) != (b.Y > p.Y))
            {
                encloses ^= (b.Y > a.Y) == Point2.Cross(b - a, p - a) > 0;
            }
        }

        return encloses;
    }

    /// <summary>Order by x, then y.</summary>
    public static bool IsBefore(Point2 a, Point2 b) => a.X < b.X || (a.X == b.X && a.Y < b.Y);

    // Lattice differences have at most 25 bits and a sign, so the products and their difference are exact in double.
    private static List<Point2> WithoutStraightCorners(IReadOnlyList<Point2> corners, IReadOnlySet<Point2> staying)
    {
        bool IsStraight(Point2 a, Point2 b, Point2 c) => Point2.Cross(b - a, c - b) == 0 && !staying.Contains(b);

        var kept = new List<Point2>(corners.Count);
        foreach (Point2 corner in corners)
        {
            while (kept.Count >= 2 && IsStraight(kept[^2], kept[^1], corner))
            {
                kept.RemoveAt(kept.Count - 1);
            }

            if (kept.Count == 0 || kept[^1] != corner)
            {
                kept.Add(corner);
            }
        }

        bool changed = true;
        while (changed && kept.Count >= 3)
        {
            changed = false;
            if (kept[^1] == kept[0] || IsStraight(kept[^2], kept[^1], kept[0]))
            {
                kept.RemoveAt(kept.Count - 1);
                changed = true;
            }
            else if (IsStraight(kept[^1], kept[0], kept[1]))
            {
                kept.RemoveAt(0);
                changed = true;
            }
        }

        return kept;
    }
}
