using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Import.Files;

namespace ShellForge.Import.Merging;

/// <summary>Finds points that lie in columns and rows along the board's axes, and the way in which they are counted.</summary>
internal static class PitchGrids
{
    private const int MostPlaces = 1000;

    // Fewer lines one way than this are a row, which single places tell as shortly.
    private const int FewestLines = 2;

    // Four places in a square lie on a circle as well.
    private const int FewestOfBoth = 5;

    private static readonly bool[] EitherWay = [false, true];

    /// <summary>The grid of all points; null where they lie in none, or in one with more empty places than taken ones.</summary>
    /// <param name="points">In the order of their designators.</param>
    public static PitchGrid? Of(IReadOnlyList<Point2> points)
    {
        if (Lines([.. points.Select(p => p.X)]) is not var (left, wide, columns)
            || Lines([.. points.Select(p => p.Y)]) is not var (low, high, rows)
            || columns < FewestLines || rows < FewestLines || columns + rows < FewestOfBoth
            || columns * rows > Math.Min(MostPlaces, 2 * points.Count))
        {
            return null;
        }

        var cells = new Dictionary<(int Column, int Row), int>();
        for (int i = 0; i < points.Count; i++)
        {
            // Rows are counted from the top.
            int column = (int)Math.Round((points[i].X - left) / wide);
            int row = rows - 1 - (int)Math.Round((points[i].Y - low) / high);
            if (!cells.TryAdd((column, row), i))
            {
                return null;
            }
        }

        var middle = new Point2(left + (wide * (columns - 1) / 2), low + (high * (rows - 1) / 2));
        PitchGrid[] ways =
        [
            .. from snake in EitherWay
               from byColumns in EitherWay
               from corner in GridCorner.All
               select Counted(new PitchGrid(new GridOrder(columns, rows, corner, byColumns, snake), wide, high, middle, [], []), cells),
        ];
        return ways.FirstOrDefault(way => way.Members.Zip(way.Members.Skip(1)).All(pair => pair.First < pair.Second)) ?? ways[0];
    }

    private static PitchGrid Counted(PitchGrid grid, Dictionary<(int Column, int Row), int> cells)
    {
        var members = new List<int>();
        var skip = new List<int>();
        for (int i = 0; i < grid.Order.Count; i++)
        {
            if (cells.TryGetValue(grid.Order.Cell(i), out int member))
            {
                members.Add(member);
            }
            else
            {
                skip.Add(i + 1);
            }
        }

        return grid with { Members = [.. members], Skip = [.. skip] };
    }

    // Coordinates that are whole steps apart: the least, the step, how many lines.
    private static (double Least, double Step, int Count)? Lines(double[] coordinates)
    {
        double[] sorted = [.. coordinates.Order()];
        double[] gaps = [.. sorted.Zip(sorted.Skip(1), (a, b) => b - a).Where(gap => gap > EcadTolerances.PitchStep)];
        if (gaps.Length == 0)
        {
            return null;
        }

        // The mean of all gaps that are one step is truer than the smallest.
        double smallest = gaps.Min();
        if (!(sorted[^1] - sorted[0] < MostPlaces * smallest))
        {
            return null;
        }

        int count = 1 + (int)Math.Round((sorted[^1] - sorted[0]) / smallest);
        double step = Math.Round((sorted[^1] - sorted[0]) / (count - 1), 3);
        double Off(double at) => Math.Abs(at - sorted[0] - (step * Math.Round((at - sorted[0]) / step)));
        return Array.TrueForAll(sorted, at => Off(at) <= EcadTolerances.PitchStep) ? (sorted[0], step, count) : null;
    }
}
