using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Planning.Outlines;

/// <summary>Outlines moved sideways corner by corner, for chamfers: both outlines then have the same corners.</summary>
public static class OutlineOffsets
{
    /// <summary>How far a chamfer's cutter goes on past the bed and past the wall's face, mm, so that it crosses both cleanly.</summary>
    public const double ChamferReach = 0.3;

    // A corner sharper than this would shoot out far past the distance it is moved by: its mitre is longer than 4 times that.
    private const double LongestMitre = 4;

    /// <summary>
    /// A counter-clockwise outline with every side moved outward by a distance (negative: inward), each corner along its mitre.
    /// Null when sides vanish or cross on the way: the caller must do without.
    /// </summary>
    public static ImmutableArray<Point2>? Mitred(ImmutableArray<Point2> loop, double distance)
    {
        var moved = ImmutableArray.CreateBuilder<Point2>(loop.Length);
        for (int i = 0; i < loop.Length; i++)
        {
            Point2 before = loop[i] - loop[(i + loop.Length - 1) % loop.Length];
            Point2 after = loop[(i + 1) % loop.Length] - loop[i];
            Point2 n1 = (1 / before.Length) * new Point2(before.Y, 0 - before.X);
            Point2 n2 = (1 / after.Length) * new Point2(after.Y, 0 - after.X);
            double bend = 1 + Point2.Dot(n1, n2);
            if (bend < 2 / (LongestMitre * LongestMitre))
            {
                return null;
            }

            moved.Add(Lattice.Snap(loop[i] + ((distance / bend) * (n1 + n2))));
        }

        for (int i = 0; i < loop.Length; i++)
        {
            Point2 was = loop[(i + 1) % loop.Length] - loop[i];
            Point2 now = moved[(i + 1) % loop.Length] - moved[i];
            if (Point2.Dot(was, now) <= 0)
            {
                return null;
            }
        }

        ImmutableArray<Point2> result = moved.ToImmutable();
        return IsSimple(result) ? result : null;
    }

    /// <summary>Whether a chamfer can be cut along an outline.</summary>
    public static bool Chamferable(ImmutableArray<Point2> loop, double chamfer) =>
        Mitred(loop, -chamfer - (2 * ChamferReach)) is not null && Mitred(loop, 2 * ChamferReach) is not null;

    /// <summary>
    /// The region without its shortest sides: overlays of curves that nearly coincide leave corners a lattice step apart, which mean
    /// nothing and make slivers of wall. No corner that stays moves; the outline strays by less than <see cref="ShortestSide"/>.
    /// </summary>
    public static Region WithoutSlivers(Region region) => Region.Union(region.Parts.Select(part =>
    {
        ImmutableArray<ImmutableArray<Point2>> loops = part.Loops;
        ImmutableArray<Point2>[] cleaned = [.. loops.Select(WithoutShortSides)];
        return cleaned.Any(l => l.Length < 3) || loops.Sum(l => l.Length) == cleaned.Sum(l => l.Length)
            ? part : Simple(cleaned) ?? part;
    }));

    /// <summary>Sides shorter than this are left out, mm: half the chord error, a fiftieth of a line of plastic.</summary>
    public const double ShortestSide = Tolerances.ChordError / 2;

    private static ImmutableArray<Point2> WithoutShortSides(ImmutableArray<Point2> loop)
    {
        var kept = ImmutableArray.CreateBuilder<Point2>(loop.Length);
        foreach (Point2 corner in loop)
        {
            if (kept.Count == 0 || Point2.Distance(kept[^1], corner) >= ShortestSide)
            {
                kept.Add(corner);
            }
        }

        while (kept.Count > 3 && Point2.Distance(kept[^1], kept[0]) < ShortestSide)
        {
            kept.RemoveAt(kept.Count - 1);
        }

        return kept.ToImmutable();
    }

    private static Region? Simple(ImmutableArray<Point2>[] loops)
    {
        try
        {
            return Region.Polygon(loops[0], [.. loops.Skip(1).Select(l => (IReadOnlyList<Point2>)l)]);
        }
        catch (ArgumentException)
        {
            return null;
        }
    }

    private static bool IsSimple(ImmutableArray<Point2> loop)
    {
        try
        {
            return !Region.Polygon(loop).IsEmpty;
        }
        catch (ArgumentException)
        {
            return false;
        }
    }
}
