using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Outlines;

namespace ShellForge.Planning.Closures;

/// <summary>
/// Where along an outline that is not round a snap bead holds. A wall gives where it is long enough to bend between corners, which are
/// stiff: the bead leaves corners out, and sides that are too short between them.
/// <code>
///   ┌─ ━━━━━━━━━━━━ ─┐      ━ bead
///   ┃                └──┐
///   ┃                   │   too short to give
///   └─ ━━━━━━━━━━━━━━━ ─┘
/// </code>
/// </summary>
/// <param name="Without">Places along the outline without bead, <see cref="Apart"/> from one to the next at the most.</param>
/// <param name="Shortest">Shortest side that carries bead, mm.</param>
/// <param name="Held">Share of the way round that carries bead.</param>
/// <param name="LongestWithout">Longest stretch without bead as a share of the way round.</param>
internal sealed record BeadRun(ImmutableArray<Point2> Without, double Shortest, double Held, double LongestWithout)
{
    /// <summary>Way from one place to the next at the most, mm.</summary>
    public const double Apart = 0.8;

    // The outline turns by as much within this way: a corner, or a bend of less than 7 mm, which is as stiff.
    private const double CornerDegrees = 40;
    private const int CornerSteps = 3;

    // A bead is left out so far round each of its places without, mm: past the gap of the lip and the height of a bead.
    private const double Round = 1.5;

    /// <summary>The bead along an outline.</summary>
    /// <param name="rim">The room inside the tub's wall, filled.</param>
    /// <param name="wall">Thickness of the wall, mm.</param>
    /// <param name="interference">How far bead and wall overlap while closing, mm.</param>
    /// <param name="strain">Strain that the filament repeats.</param>
    public static BeadRun Of(Region rim, double wall, double interference, double strain)
    {
        double shortest = ShortestSide(wall, interference, strain);
        var without = ImmutableArray.CreateBuilder<Point2>();
        (int all, int longest) = (0, 0);
        foreach (Region part in rim.Parts)
        {
            ImmutableArray<OutlinePlace> places = OutlinePlaces.Along(part, Apart);
            bool[] stiff = [.. Enumerable.Range(0, places.Length).Select(i => IsCorner(places, i))];
            int first = Array.IndexOf(stiff, true);
            for (int i = 1; first >= 0 && i < stiff.Length;)
            {
                int run = 0;
                while (i + run < stiff.Length && !stiff[(first + i + run) % stiff.Length])
                {
                    run++;
                }

                for (int k = 0; k < run && run * Apart < shortest; k++)
                {
                    stiff[(first + i + k) % stiff.Length] = true;
                }

                i += run + 1;
            }

            without.AddRange(places.Where((_, i) => stiff[i]).Select(place => place.At));
            all += places.Length;
            longest = Math.Max(longest, Longest(stiff));
        }

        return new BeadRun(
            without.ToImmutable(), shortest, all == 0 ? 0 : 1 - ((double)without.Count / all), all == 0 ? 1 : (double)longest / all);
    }

    /// <summary>
    /// Shortest side that gives by half the overlap, the lip by the other half, within a strain: a beam held at both ends bends by
    /// strain x length^2 / (16 x half its thickness), mm. Source: beam tables, even load.
    /// </summary>
    public static double ShortestSide(double wall, double interference, double strain) => Math.Sqrt(8 * interference * wall / strain);

    /// <summary>What is taken out of the bead in plan.</summary>
    public Region LeftOut() => Region.Union(Without.Select(place => Region.Disc(place, Ring.Hole(Round))));

    private static bool IsCorner(ImmutableArray<OutlinePlace> places, int i)
    {
        Angle before = places[(i + places.Length - CornerSteps) % places.Length].Outward;
        Angle after = places[(i + CornerSteps) % places.Length].Outward;
        return Angle.Between(before, after).Degrees > CornerDegrees;
    }

    private static int Longest(bool[] stiff)
    {
        (int longest, int run) = (0, 0);
        for (int i = 0; i < 2 * stiff.Length; i++)
        {
            run = stiff[i % stiff.Length] ? run + 1 : 0;
            longest = Math.Max(longest, run);
        }

        return Math.Min(longest, stiff.Length);
    }
}
