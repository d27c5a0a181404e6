using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Import.Files;

namespace ShellForge.Import.Patterns;

/// <summary>Finds grids, and single columns and rows, among things that are counted one after the other.</summary>
/// <param name="things">In the order of counting.</param>
/// <param name="centre">The board's centre, which needs not be said; null where it is not known.</param>
internal sealed class GridFinder(IReadOnlyList<PlacedThing> things, Point2? centre)
{
    // What the board file takes.
    private const double SmallestPitch = 0.5;
    private const double LargestPitch = 200;
    private const double LargestCoordinate = 2000;

    private const int FewestWithGaps = 5;
    private const int Many = 9;
    private const int Fewest = 3;

    // Few places may have too many gaps where a longer beginning of them has not.
    private const int MostTries = 12;

    private static readonly bool[] EitherWay = [false, true];

    /// <summary>Grids that begin with a thing: the longest, and the longest of whole lines where that is another.</summary>
    /// <param name="first">The thing.</param>
    /// <param name="end">The one behind the last that may be in it.</param>
    /// <param name="fewest">How many it has at least.</param>
    public IEnumerable<GridPattern> Beginning(int first, int end, int fewest)
    {
        int count = Beginnings.Longest(Fewest, end - first, length => IsInLines(first, length));
        GridPattern? longest = null;
        for (int tries = 0; count >= fewest && tries < MostTries && longest is null; count--, tries++)
        {
            longest = Over(first, count);
        }

        if (longest is null)
        {
            yield break;
        }

        yield return longest;
        int whole = longest.Closed ? 0 : longest.Taken.Count(place => place < longest.Count - longest.LineLength);
        if (whole >= fewest && Over(first, whole) is { } lines)
        {
            yield return lines;
        }
    }

    /// <summary>The grid of all things, whatever their order; null where they lie in none.</summary>
    public GridPattern? OfAll() => things.Count < Fewest ? null : Written([.. Enumerable.Range(0, things.Count)], counted: false);

    private GridPattern? Over(int first, int count) => Written([.. Enumerable.Range(first, count)], counted: true);

    // Whether things may lie in one grid: what begins a grid lies in its lines and is turned as all of it as well.
    private bool IsInLines(int first, int count)
    {
        bool alike = Enumerable.Range(first, count)
            .All(i => Math.Abs(Turns.Reduced((things[i].Turn - things[first].Turn) ?? 0)) <= 2 * EcadTolerances.PatternTurn);
        if (!alike)
        {
            return false;
        }

        Point2[] points = [.. Enumerable.Range(first, count).Select(i => things[i].At)];
        return GridFit.Through(points, counted: true) is { } fit && fit.Farthest(points) <= EcadTolerances.PatternPlace
            && Order(fit, counted: true) is not null;
    }

    private GridPattern? Written(int[] members, bool counted)
    {
        Point2[] points = [.. members.Select(i => things[i].At)];
        if (GridFit.Through(points, counted) is not { } fit || Order(fit, counted) is not { } order || !IsDense(order, members.Length)
            || Rounded(fit, points) is not { } round)
        {
            return null;
        }

        (int Place, int Member)[] places = [.. round.Cells.Select((cell, i) => (Index(order, cell), members[i])).OrderBy(p => p.Item1)];
        var taken = new HashSet<int>(places.Select(p => p.Place));
        return new GridPattern(
            order, round.Pitch, round.Middle, round.TurnDegrees, [.. places.Select(p => p.Member)],
            [.. Enumerable.Range(0, order.Count).Where(place => !taken.Contains(place)).Select(place => place + 1)]).Of(things);
    }

    // Few places and a gap say nothing about a step; of many, as much as half may be empty.
    private static bool IsDense(GridOrder order, int taken) => order.Count == taken
        || (taken >= FewestWithGaps
            && (taken >= Many && order is { Columns: > 1, Rows: > 1 } ? 2 : 3) * (order.Count - taken) <= order.Count);

    // The first way of counting in which each comes behind the one before.
    private static GridOrder? Order(GridFit fit, bool counted)
    {
        foreach (bool snake in EitherWay)
        {
            foreach (bool byColumns in EitherWay)
            {
                foreach (GridCorner corner in GridCorner.All)
                {
                    var order = new GridOrder(fit.Columns, fit.Rows, corner, byColumns, snake);
                    if (!counted || IsCounted(order, fit.Cells))
                    {
                        return order;
                    }
                }
            }
        }

        return null;
    }

    private static bool IsCounted(GridOrder order, (int Column, int Row)[] cells)
    {
        int last = -1;
        foreach ((int, int) cell in cells)
        {
            int index = Index(order, cell);
            if (index <= last)
            {
                return false;
            }

            last = index;
        }

        return true;
    }

    // The way back from a cell to the place that GridOrder gives it.
    private static int Index(GridOrder order, (int Column, int Row) cell)
    {
        int column = order.First.Right ? order.Columns - 1 - cell.Column : cell.Column;
        int row = order.First.Bottom ? order.Rows - 1 - cell.Row : cell.Row;
        (int line, int along, int length) = order.ByColumns ? (column, row, order.Rows) : (row, column, order.Columns);
        return (line * length) + (order.Snake && line % 2 == 1 ? length - 1 - along : along);
    }

    // One number after the other is made round as far as the points allow; null where the board file can't say it.
    private GridFit? Rounded(GridFit fit, Point2[] points)
    {
        double best = fit.Farthest(points);
        bool Fits(double share, GridFit tried) => tried.Farthest(points) <= EcadTolerances.RoomToRound(best, share);
        if (best > EcadTolerances.PatternPlace
            || RoundNumber.Of(fit.TurnDegrees, t => Fits(0.4, fit with { TurnDegrees = t })) is not { } turn
            || Pitched(fit with { TurnDegrees = turn }, Fits) is not { } pitched || Placed(pitched, Fits) is not { } placed)
        {
            return null;
        }

        bool IsPitch(double pitch, int lines) => lines == 1 || pitch is >= SmallestPitch and <= LargestPitch;
        return IsPitch(placed.Pitch.X, placed.Columns) && IsPitch(placed.Pitch.Y, placed.Rows)
            && Math.Abs(placed.Middle.X) <= LargestCoordinate && Math.Abs(placed.Middle.Y) <= LargestCoordinate ? placed : null;
    }

    // One pitch for both where they are the same.
    private static GridFit? Pitched(GridFit fit, Func<double, GridFit, bool> fits)
    {
        double both = fit.Columns == 1 ? fit.Pitch.Y : fit.Rows == 1 ? fit.Pitch.X : (fit.Pitch.X + fit.Pitch.Y) / 2;
        if (RoundNumber.Of(both, p => fits(0.6, fit with { Pitch = new Point2(p, p) })) is { } same)
        {
            return fit with { Pitch = new Point2(same, same) };
        }

        return RoundNumber.Of(fit.Pitch.X, p => fits(0.6, fit with { Pitch = fit.Pitch with { X = p } })) is { } across
            && RoundNumber.Of(fit.Pitch.Y, p => fits(0.7, fit with { Pitch = new Point2(across, p) })) is { } down
            ? fit with { Pitch = new Point2(across, down) } : null;
    }

    private GridFit? Placed(GridFit fit, Func<double, GridFit, bool> fits)
    {
        if (centre is { } board && fits(1, fit with { Middle = board }))
        {
            return fit with { Middle = board };
        }

        return RoundNumber.Of(fit.Middle.X, x => fits(0.85, fit with { Middle = fit.Middle with { X = x } })) is { } at
            && RoundNumber.Of(fit.Middle.Y, y => fits(1, fit with { Middle = new Point2(at, y) })) is { } height
            ? fit with { Middle = new Point2(at, height) } : null;
    }
}
