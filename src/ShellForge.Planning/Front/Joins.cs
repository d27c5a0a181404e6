using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Outlines;

namespace ShellForge.Planning.Front;

/// <summary>Straight strips that join a piece to what lies round it.</summary>
internal static class Joins
{
    // Places are tried this far apart along the piece, mm.
    private const double Apart = 2;

    /// <summary>
    /// Strips from a piece to the nearest of the rest, farthest from what is in the way and spread round the piece; empty where there is no
    /// free way.
    /// </summary>
    /// <param name="piece">The piece.</param>
    /// <param name="rest">What it is joined to.</param>
    /// <param name="width">Width of a strip, mm.</param>
    /// <param name="taken">What strips keep away from.</param>
    /// <param name="clear">By how much, mm.</param>
    /// <param name="count">How many at the most.</param>
    public static Region Spread(Region piece, Region rest, double width, Region taken, double clear, int count)
    {
        (Region Strip, double Clear)[] ways =
        [
            .. Ways(piece, rest, width)
                .Select(strip => (strip, taken.IsEmpty ? double.PositiveInfinity : taken.Distance(strip)))
                .Where(way => way.Item2 >= clear)
                .OrderByDescending(way => Math.Round(way.Item2, 3)),
        ];
        var chosen = new List<Region>();
        foreach ((Region strip, _) in ways)
        {
            if (chosen.Count < count && chosen.TrueForAll(other => other.Distance(strip) > Math.Sqrt(piece.Filled().Area) / 2))
            {
                chosen.Add(strip);
            }
        }

        return Region.Union(chosen);
    }

    /// <summary>The shortest strip from a piece to the rest; empty where they touch.</summary>
    public static Region Shortest(Region piece, Region rest, double width) =>
        Ways(piece, rest, width).MinBy(strip => Math.Round(strip.Area, 3)) ?? Region.Empty;

    private static ImmutableArray<Region> Ways(Region piece, Region rest, double width) =>
        [.. OutlinePlaces.Along(piece, Apart).Select(place => Way(place.At, rest, width)).Where(strip => !strip.IsEmpty)];

    // The straight way from a place to the nearest point of a region.
    private static Region Way(Point2 from, Region to, double width)
    {
        Point2 end = to.Loops.Select(loop => OutlinePlaces.Nearest(loop, from)).MinBy(place => Point2.Distance(place, from));
        double length = Point2.Distance(from, end);
        return length <= width ? Region.Empty : Strips.Along(from, Angle.Of(end - from), width, -width / 2, length + (width / 2));
    }
}
