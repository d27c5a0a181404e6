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
            if (Mitre(loop, i) is not { } way)
            {
                return null;
            }

            moved.Add(Lattice.Snap(loop[i] + (distance * way)));
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

    /// <summary>
    /// As <see cref="Mitred"/> for outlines of which some sides would vanish: every run of sides that stay, its corners moved along their
    /// mitres and its ends straight out. Between the runs lie corners that are too tight or too sharp for the distance.
    /// </summary>
    /// <param name="loop">A counter-clockwise outline.</param>
    /// <param name="outward">How far the sides go outward, mm.</param>
    /// <param name="inward">How far they go inward as well, mm.</param>
    /// <param name="longestMitre">Corners that move farther than so many times the sides part two runs.</param>
    public static IEnumerable<OutlineRun> MitredRuns(
        ImmutableArray<Point2> loop, double outward, double inward, double longestMitre)
    {
        int count = loop.Length;
        bool[] sharp = [.. Enumerable.Range(0, count).Select(i => !(Mitre(loop, i) is { } way && way.Length <= longestMitre))];
        bool[] stays = [.. Enumerable.Range(0, count).Select(i => Stays(i, outward) && Stays(i, -inward))];
        int first = Enumerable.Range(0, count).FirstOrDefault(i => stays[i] && !GoesOn(i));
        for (int i = 0; i < count;)
        {
            if (!stays[(first + i) % count])
            {
                i++;
                continue;
            }

            int from = i++;
            while (i < count && GoesOn((first + i) % count))
            {
                i++;
            }

            int[] corners = [.. Enumerable.Range(first + from, i - from + 1).Select(corner => corner % count)];
            foreach (OutlineRun run in Simple(new OutlineRun(
                [.. corners.Select(corner => loop[corner])], Moved(corners, outward), Moved(corners, -inward))))
            {
                yield return run;
            }
        }

        // Whether a side follows on the one before it without a break.
        bool GoesOn(int side) => stays[side] && stays[(side + count - 1) % count] && !sharp[side];

        bool Stays(int side, double distance)
        {
            int next = (side + 1) % count;
            Point2 was = loop[next] - loop[side];
            Point2 a = sharp[side] ? Point2.Origin : distance * Mitre(loop, side)!.Value;
            Point2 b = sharp[next] ? Point2.Origin : distance * Mitre(loop, next)!.Value;
            return was.Length >= ShortestSide && Point2.Dot(was, was + b - a) > 0;
        }

        ImmutableArray<Point2> Moved(int[] corners, double distance) =>
        [
            Lattice.Snap(loop[corners[0]] + (distance * Normal(loop[corners[0]], loop[corners[1]]))),
            .. corners[1..^1].Select(corner => Lattice.Snap(loop[corner] + (distance * Mitre(loop, corner)!.Value))),
            Lattice.Snap(loop[corners[^1]] + (distance * Normal(loop[corners[^2]], loop[corners[^1]]))),
        ];
    }

    // A run whose two ends meet each other, as where an outline dips in, is parted until none of its pieces crosses itself.
    private static IEnumerable<OutlineRun> Simple(OutlineRun run)
    {
        if (run.Along.Length < 2 + 1 || (IsSimple([.. run.Along, .. run.Inside.Reverse()])
            && IsSimple([.. run.Outside, .. run.Inside.Reverse()])))
        {
            return [run];
        }

        int half = run.Along.Length / 2;
        return [.. Simple(run.Part(0, half)), .. Simple(run.Part(half, run.Along.Length - 1))];
    }

    /// <summary>Direction outward of a side of an outline that runs counter-clockwise, of length 1.</summary>
    public static Point2 Normal(Point2 from, Point2 to)
    {
        Point2 along = to - from;
        return (1 / along.Length) * new Point2(along.Y, 0 - along.X);
    }

    // Way of a corner when its two sides move outward by 1 mm; null where it is too long.
    private static Point2? Mitre(ImmutableArray<Point2> loop, int corner)
    {
        Point2 n1 = Normal(loop[(corner + loop.Length - 1) % loop.Length], loop[corner]);
        Point2 n2 = Normal(loop[corner], loop[(corner + 1) % loop.Length]);
        double bend = 1 + Point2.Dot(n1, n2);
        return bend < 2 / (LongestMitre * LongestMitre) ? null : (1 / bend) * (n1 + n2);
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

/// <summary>A run of an outline's sides.</summary>
/// <param name="Along">Its corners.</param>
/// <param name="Outside">The same corners moved outward.</param>
/// <param name="Inside">The same corners moved inward.</param>
public sealed record OutlineRun(ImmutableArray<Point2> Along, ImmutableArray<Point2> Outside, ImmutableArray<Point2> Inside)
{
    /// <summary>How long it is, mm.</summary>
    public double Length => Along.Zip(Along.Skip(1), Point2.Distance).Sum();

    internal OutlineRun Part(int from, int to) => new(Along[from..(to + 1)], Outside[from..(to + 1)], Inside[from..(to + 1)]);
}
