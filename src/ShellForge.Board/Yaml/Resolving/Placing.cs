using System.Collections.Immutable;
using ShellForge.Board.Yaml.Forms;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Yaml.Resolving;

/// <summary>One place of a pattern, centred.</summary>
/// <param name="Index">Place on the circle, from 0.</param>
/// <param name="At">Where.</param>
/// <param name="Direction">Direction from the board's centre.</param>
internal readonly record struct PlaceOnBoard(int Index, Point2 At, Angle Direction);

/// <summary>Writes out patterns.</summary>
internal static class Placing
{
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

        return said.Circle.Given && said.Count.Given ? OnCircle(said, context) : [];
    }

    private static PlaceOnBoard Single(Point2 at, ResolvingContext context) => new(0, at, Angle.Of(at - context.Centre));

    private static ImmutableArray<PlaceOnBoard> OnCircle(ParsedPlacement said, ResolvingContext context)
    {
        int count = said.Count.Value;
        ImmutableArray<int> skip = said.Skip.Given ? said.Skip.Value : [];
        foreach (int place in skip.Where(s => s > count))
        {
            context.Sink.Error(said.Skip.Place, "out-of-range", $"place {place} is to be skipped, but there are {count}",
                $"expected places from 1 to {count}");
        }

        double step = (said.Clockwise.Or(false) ? -360.0 : 360.0) / count;
        return
        [
            .. Enumerable.Range(0, count)
                .Where(i => !skip.Contains(i + 1))
                .Select(i =>
                {
                    Angle direction = said.From.Or(Angle.Zero) + Angle.FromDegrees(step * i);
                    return new PlaceOnBoard(i, context.Centre + Point2.Polar(said.Circle.Value / 2, direction), direction);
                }),
        ];
    }
}
