using System.Collections.Immutable;
using ShellForge.Board.Description;
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
        var order = new GridOrder(said.Columns.Value, said.Rows.Value, said.First.Value, said.ByColumns.Value, said.Snake.Value);
        if (order.Count > BoardKinds.Most)
        {
            context.Sink.Error(said.Rows.Place, "out-of-range", $"{order.Columns} columns of {order.Rows} are {order.Count} places",
                $"expected at most {BoardKinds.Most}");
            return [];
        }

        Point2 middle = said.At.Given ? said.At.Value - context.Origin : context.Centre;
        Angle turn = said.Turn.Value;
        ImmutableArray<int> skip = Skipped(said.Skip, order.Count, context);
        return
        [
            .. Enumerable.Range(0, order.Count).Where(i => !skip.Contains(i + 1)).Select(i =>
            {
                (int column, int row) = order.Cell(i);
                var from = new Point2(
                    said.Pitch.Value.X * (column - ((order.Columns - 1) / 2.0)), said.Pitch.Value.Y * (((order.Rows - 1) / 2.0) - row));
                return new PlaceOnBoard(i, middle + from.Turned(turn), turn);
            }),
        ];
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
