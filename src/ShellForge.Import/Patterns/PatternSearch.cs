using ShellForge.Geometry.Numerics;
using ShellForge.Import.Files;

namespace ShellForge.Import.Patterns;

/// <summary>Finds the fewest lines of a board file that say where things are.</summary>
internal sealed class PatternSearch
{
    // A place to be skipped is a number to be read, the tail of a line that is not full more than that.
    private const double CostOfSkip = 0.1;
    private const double CostOfTail = 0.5;

    // Of what is this long, no other beginning is tried: the search stays short, and nobody counts a pattern in two by its middle.
    private const int Sure = 8;

    // What a board file takes; of more, the first are sought through.
    private const int MostThings = 1000;

    private readonly int _end;
    private readonly int _fewest;
    private readonly CircleFinder? _circles;
    private readonly GridFinder? _grids;
    private readonly (double Cost, PlacePattern? Pattern)?[] _known;

    private PatternSearch(IReadOnlyList<PlacedThing> things, Point2? centre, int fewest, bool grids)
    {
        _end = Math.Min(MostThings, things.Count);
        _fewest = fewest;
        _circles = centre is { } middle ? new CircleFinder(things, middle) : null;
        _grids = grids ? new GridFinder(things, centre) : null;
        _known = new (double, PlacePattern?)?[_end + 1];
    }

    /// <summary>Patterns of things that are counted in their order; what is in none stands alone.</summary>
    /// <param name="things">In the order of counting.</param>
    /// <param name="centre">The board's centre; null where it is not known.</param>
    /// <param name="fewest">The fewest members of a pattern.</param>
    public static List<PlacePattern> Counted(IReadOnlyList<PlacedThing> things, Point2? centre, int fewest) =>
        new PatternSearch(things, centre, fewest, grids: true).Found();

    /// <summary>
    /// Patterns of things that have no order of their own: circles and arcs, or where those are not all of them, a grid of all.
    /// </summary>
    /// <param name="things">In any order.</param>
    /// <param name="centre">The board's centre; null where it is not known.</param>
    /// <param name="fewest">The fewest members of a pattern.</param>
    public static List<PlacePattern> Uncounted(IReadOnlyList<PlacedThing> things, Point2? centre, int fewest)
    {
        List<PlacePattern> round = [];
        foreach (List<int> ring in centre is { } middle ? Rings(things, middle) : [])
        {
            PlacedThing[] own = [.. ring.Select(i => things[i])];
            round.AddRange(new PatternSearch(own, centre, fewest, grids: false).Found().Select(p => p.Renumbered(ring)));
        }

        return round.Sum(p => p.Members.Length) < things.Count && things.Count is > 3 and <= MostThings
            && new GridFinder(things, centre).OfAll() is { Order: { Columns: > 1, Rows: > 1 } } grid ? [grid] : round;
    }

    private List<PlacePattern> Found()
    {
        var found = new List<PlacePattern>();
        for (int i = 0; i < _end;)
        {
            PlacePattern? pattern = Best(i).Pattern;
            if (pattern is not null)
            {
                found.Add(pattern);
            }

            i += pattern?.Members.Length ?? 1;
        }

        return found;
    }

    // The fewest lines from a thing on.
    private (double Cost, PlacePattern? Pattern) Best(int first)
    {
        if (first >= _end)
        {
            return (0, null);
        }

        if (_known[first] is { } known)
        {
            return known;
        }

        (double Cost, PlacePattern? Pattern) best = (double.PositiveInfinity, null);
        foreach (PlacePattern pattern in Beginning(first))
        {
            double cost = Cost(pattern) + Best(first + pattern.Members.Length).Cost;
            best = cost < best.Cost ? (cost, pattern) : best;
        }

        if (best.Pattern is not { Members.Length: >= Sure })
        {
            double alone = 1 + Best(first + 1).Cost;
            best = alone < best.Cost ? (alone, null) : best;
        }

        _known[first] = best;
        return best;
    }

    private IEnumerable<PlacePattern> Beginning(int first)
    {
        if (_circles?.Longest(first, _end, _fewest) is { } circle)
        {
            yield return circle;
        }

        foreach (GridPattern grid in _grids?.Beginning(first, _end, _fewest) ?? [])
        {
            yield return grid;
        }
    }

    private static double Cost(PlacePattern pattern) =>
        1 + (CostOfSkip * pattern.Skip.Length) + (pattern.Closed || pattern is CirclePattern ? 0 : CostOfTail);

    // Things of one radius, counted counter-clockwise; from the right where they go all round, else from the widest gap on.
    private static List<List<int>> Rings(IReadOnlyList<PlacedThing> things, Point2 centre)
    {
        List<(double Radius, int Index)> sorted = [.. things.Select((t, i) => (Point2.Distance(t.At, centre), i)).OrderBy(t => t)];
        var rings = new List<List<int>>();
        double last = double.NegativeInfinity;
        foreach ((double radius, int index) in sorted.Where(t => t.Radius > EcadTolerances.SameOpening))
        {
            if (!(radius - last <= EcadTolerances.PatternPlace))
            {
                rings.Add([]);
            }

            rings[^1].Add(index);
            last = radius;
        }

        return [.. rings.Select(ring => FromTheWidestGap(ring, i => Angle.Of(things[i].At - centre).Normalized.Degrees))];
    }

    private static List<int> FromTheWidestGap(List<int> ring, Func<int, double> direction)
    {
        // A hair below 0 is 0.
        const double hair = 0.01;
        List<(double Turn, int Index)> sorted = [.. ring.Select(i => (Turns.Positive(direction(i) + hair), i)).OrderBy(t => t)];
        double widest = sorted[0].Turn + 360 - sorted[^1].Turn;
        int begin = 0;
        for (int i = 1; i < sorted.Count; i++)
        {
            double gap = sorted[i].Turn - sorted[i - 1].Turn;
            if (gap > widest + 1)
            {
                (widest, begin) = (gap, i);
            }
        }

        return [.. sorted.Skip(begin).Concat(sorted.Take(begin)).Select(t => t.Index)];
    }
}
