using System.Collections.Immutable;
using ShellForge.Board.Yaml.Forms;
using ShellForge.Board.Yaml.Vocabulary;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Yaml.Resolving;

/// <summary>One place of a pattern, centred.</summary>
/// <param name="Index">Place on the circle or in the grid, from 0.</param>
/// <param name="At">Where.</param>
/// <param name="Direction">What turns with it: on a circle and for a single place the direction from the board's centre, in a grid the
/// grid's turn.</param>
internal readonly record struct PlaceOnBoard(int Index, Point2 At, Angle Direction);

/// <summary>Writes out patterns.</summary>
internal static class Placing
{
    // Places nearer to each other than this share of a degree are one.
    private const double Least = 0.05;

    /// <summary>The places that were said; none when there is nothing to go by.</summary>
    public static ImmutableArray<PlaceOnBoard> Places(ParsedPlacement said, ResolvingContext context)
    {
        if (said.At.Given)
        {
            return [Single(said.At.Value - context.Origin, context)];
        }

        if (said.Polar.Given)
        {
            return [Single(context.Centre + said.Polar.Value, context)];
        }

        return said.Grid.Given ? InGrid(said.Grid.Value, context)
            : said.Circle.Given && said.Count.Given ? OnCircle(said, context) : [];
    }

    private static PlaceOnBoard Single(Point2 at, ResolvingContext context) => new(0, at, Angle.Of(at - context.Centre));

    private static ImmutableArray<PlaceOnBoard> OnCircle(ParsedPlacement said, ResolvingContext context)
    {
        int count = said.Count.Value;
        if (said.Step.Given && (count - 1) * said.Step.Value.Degrees >= 360 - Least)
        {
            context.Sink.Error(said.Step.Place, "out-of-range",
                $"{count} places {NumberText.Written(said.Step.Value.Degrees)} degrees apart go more than once round the circle",
                $"expected a step below {NumberText.Written(Math.Round(360.0 / count, 3))}, or none for a full circle");
            return [];
        }

        double step = (said.Clockwise.Value ? -1 : 1) * (said.Step.Given ? said.Step.Value.Degrees : 360.0 / count);
        ImmutableArray<int> skip = Skipped(said.Skip, count, context);
        return
        [
            .. Enumerable.Range(0, count)
                .Where(i => !skip.Contains(i + 1))
                .Select(i =>
                {
                    Angle direction = said.From.Value + Angle.FromDegrees(step * i);
                    return new PlaceOnBoard(i, context.Centre + Point2.Polar(said.Circle.Value / 2, direction), direction);
                }),
        ];
    }

    private static ImmutableArray<PlaceOnBoard> InGrid(ParsedGrid said, ResolvingContext context)
    {
        (int columns, int rows) = (said.Columns.Value, said.Rows.Value);
        if (columns * rows > BoardKinds.Most)
        {
            context.Sink.Error(said.Rows.Place, "out-of-range", $"{columns} columns of {rows} are {columns * rows} places",
                $"expected at most {BoardKinds.Most}");
            return [];
        }

        Point2 middle = said.At.Given ? said.At.Value - context.Origin : context.Centre;
        Angle turn = said.Turn.Value;
        ImmutableArray<int> skip = Skipped(said.Skip, columns * rows, context);
        return
        [
            .. Enumerable.Range(0, columns * rows).Where(i => !skip.Contains(i + 1)).Select(i =>
            {
                Point2 cell = Cell(said, i);
                var from = new Point2(
                    said.Pitch.Value.X * (cell.X - ((columns - 1) / 2.0)), said.Pitch.Value.Y * (((rows - 1) / 2.0) - cell.Y));
                return new PlaceOnBoard(i, middle + from.Turned(turn), turn);
            }),
        ];
    }

    // Column from the left and row from the top of a place in the order of counting.
    private static Point2 Cell(ParsedGrid said, int index)
    {
        (int columns, int rows) = (said.Columns.Value, said.Rows.Value);
        bool byColumns = said.ByColumns.Value;
        (int line, int along) = Math.DivRem(index, byColumns ? rows : columns);
        along = said.Snake.Value && line % 2 == 1 ? (byColumns ? rows : columns) - 1 - along : along;
        (int column, int row) = byColumns ? (line, along) : (along, line);
        GridCorner first = said.First.Value;
        return new Point2(first.Right ? columns - 1 - column : column, first.Bottom ? rows - 1 - row : row);
    }

    private static ImmutableArray<int> Skipped(Parsed<ImmutableArray<int>> said, int count, ResolvingContext context)
    {
        ImmutableArray<int> skip = said.Given ? said.Value : [];
        foreach (int place in skip.Where(s => s > count))
        {
            context.Sink.Error(said.Place, "out-of-range", $"place {place} is to be skipped, but there are {count}",
                $"expected places from 1 to {count}");
        }

        return skip;
    }
}
