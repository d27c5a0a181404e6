using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Checks.Gauges;

/// <summary>
/// Where a section may have something narrow, wall or gap: two stretches of outline nearer to each other than a width that are no
/// neighbours along their loop. Opening and closing a whole section costs far more than this look, and most sections have nothing.
/// It errs to the careful side: what it names may be wide enough, what is narrow it names.
/// </summary>
internal static class NarrowPlaces
{
    private const int RunLength = 16;

    /// <summary>
    /// Along the outline two places must be this many times farther apart than straight: round a half circle it is 1.57, round a corner
    /// of 60 degrees 2.
    /// </summary>
    private const double Detour = 1.9;

    /// <summary>
    /// And so many widths, so that sharp corners are none; a wall or gap that a rule tells is longer than three widths on either side.
    /// </summary>
    private const double CornerArc = 2.5;

    /// <summary>Half of the way round a wedge's point runs along either side; a little more, to be past the limit.</summary>
    private const double WedgeShare = 0.55;

    /// <summary>From so many places on the whole section is looked at.</summary>
    private const int Many = 150;

    /// <summary>Boxes that hold all narrow places, apart from each other.</summary>
    /// <param name="region">The section.</param>
    /// <param name="width">What is narrower than this is narrow, mm.</param>
    public static ImmutableArray<Box2> Of(Region region, double width)
    {
        var found = new List<Box2>();
        Side[] sides = SidesOf(region, width, found);
        Box2[] runs = [.. Enumerable.Range(0, (sides.Length + RunLength - 1) / RunLength).Select(run => BoxOf(sides, run))];
        for (int i = 0; i < runs.Length && found.Count <= Many; i++)
        {
            for (int j = i; j < runs.Length; j++)
            {
                if (runs[j].Touches(runs[i].Grown(width)))
                {
                    LookAt(sides, i, j, width, found);
                }
            }
        }

        return found.Count > Many ? [region.Bounds] : Merged(found);
    }

    private readonly record struct Side(Point2 From, Point2 To, Box2 Box, int Loop, double Start, double Length, double Around);

    private static Side[] SidesOf(Region region, double width, List<Box2> found)
    {
        var sides = new List<Side>();
        int number = 0;
        foreach (ImmutableArray<Point2> loop in region.Loops)
        {
            double around = 0;
            for (int i = 0; i < loop.Length; i++)
            {
                around += Point2.Distance(loop[i], loop[(i + 1) % loop.Length]);
            }

            double start = 0;
            for (int i = 0; i < loop.Length; i++)
            {
                Point2 to = loop[(i + 1) % loop.Length];
                double length = Point2.Distance(loop[i], to);
                sides.Add(new Side(loop[i], to, Box2.Empty.Including(loop[i]).Including(to), number, start, length, around));
                start += length;
            }

            // A pin or a pinhole has no two places far apart along its outline.
            Box2 box = Box2.Of(loop);
            if (Math.Min(box.Size.X, box.Size.Y) < 2 * width)
            {
                found.Add(box);
            }

            number++;
        }

        return [.. sides];
    }

    private static void LookAt(Side[] sides, int firstRun, int secondRun, double width, List<Box2> found)
    {
        int firstEnd = Math.Min(sides.Length, (firstRun + 1) * RunLength);
        int secondEnd = Math.Min(sides.Length, (secondRun + 1) * RunLength);
        for (int a = firstRun * RunLength; a < firstEnd; a++)
        {
            Box2 near = sides[a].Box.Grown(width);
            for (int b = Math.Max(a + 1, secondRun * RunLength); b < secondEnd; b++)
            {
                if (sides[b].Box.Touches(near) && AreNarrow(sides[a], sides[b], width))
                {
                    Box2 wide = sides[b].Box.Grown(width);
                    found.Add(new Box2(
                        new Point2(Math.Max(near.Min.X, wide.Min.X), Math.Max(near.Min.Y, wide.Min.Y)),
                        new Point2(Math.Min(near.Max.X, wide.Max.X), Math.Min(near.Max.Y, wide.Max.Y))));
                }
            }
        }
    }

    // Straight sides that don't cross are nearest at an end of one of them. Of two sides of one thin wall the ends may be neighbours
    // round its tip, but then their middles are not; and of two long sides of a wedge only a stretch near its point is narrow, which
    // begins where the way round the point is long enough to count.
    private static bool AreNarrow(in Side a, in Side b, double width) => IsNarrow(a, b, width) || IsNarrow(b, a, width);

    private static bool IsNarrow(in Side from, in Side onto, double width)
    {
        double pastPoint = from.Length == 0 ? 0 : Math.Min(1, WedgeShare * CornerArc * width / from.Length);
        return IsNarrow(from, 0, onto, width) || IsNarrow(from, 0.5, onto, width) || IsNarrow(from, 1, onto, width)
            || IsNarrow(from, pastPoint, onto, width) || IsNarrow(from, 1 - pastPoint, onto, width);
    }

    private static bool IsNarrow(in Side from, double at, in Side onto, double width)
    {
        Point2 p = from.From + (at * (from.To - from.From));
        Point2 side = onto.To - onto.From;
        double share = onto.Length == 0 ? 0 : Math.Clamp(Point2.Dot(p - onto.From, side) / (onto.Length * onto.Length), 0, 1);
        double distance = Point2.Distance(p, onto.From + (share * side));
        if (distance >= width)
        {
            return false;
        }

        if (from.Loop != onto.Loop)
        {
            return true;
        }

        double along = Math.Abs(from.Start + (at * from.Length) - (onto.Start + (share * onto.Length)));
        double arc = Math.Min(along, from.Around - along);
        return arc > Detour * distance && arc > CornerArc * width;
    }

    private static Box2 BoxOf(Side[] sides, int run)
    {
        Box2 box = Box2.Empty;
        for (int i = run * RunLength; i < Math.Min(sides.Length, (run + 1) * RunLength); i++)
        {
            box = box.Including(sides[i].From).Including(sides[i].To);
        }

        return box;
    }

    private static ImmutableArray<Box2> Merged(List<Box2> boxes)
    {
        var merged = new List<Box2>();
        foreach (Box2 box in boxes)
        {
            Box2 grown = box;
            for (int i = merged.FindIndex(other => other.Touches(grown)); i >= 0; i = merged.FindIndex(other => other.Touches(grown)))
            {
                grown = grown.Including(merged[i].Min).Including(merged[i].Max);
                merged.RemoveAt(i);
            }

            merged.Add(grown);
        }

        return [.. merged];
    }
}
