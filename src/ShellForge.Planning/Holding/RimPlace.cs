using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Planning.Holding;

/// <summary>A place on the board's outer edge.</summary>
/// <param name="Edge">On the edge.</param>
/// <param name="Outward">Unit vector away from the board, square to the edge.</param>
internal readonly record struct RimPlace(Point2 Edge, Point2 Outward)
{
    /// <summary>A point so far inside the edge, mm; outside of it where negative.</summary>
    public Point2 Inside(double depth) => Edge - (depth * Outward);

    /// <summary>The places all round a board: round ones from the direction that points up, others along their sides.</summary>
    public static ImmutableArray<RimPlace> Of(BoardOutline outline, Angle up)
    {
        const int directions = 72;
        return outline is PolygonOutline
            ? [.. outline.Region.Filled().Loops.SelectMany(loop => Along(loop, Length(loop) / directions))]
            : [.. Enumerable.Range(0, directions).Select(i => Point2.Polar(1, (up + Angle.FromDegrees(i * 360.0 / directions)).Normalized))
                .Select(outward => new RimPlace(outline.OuterRadius * outward, outward))];
    }

    private static double Length(ImmutableArray<Point2> loop) =>
        loop.Select((corner, i) => Point2.Distance(corner, loop[(i + 1) % loop.Length])).Sum();

    // One place a step, whatever the corners between: a curve drawn as chords gets as many as its length.
    private static IEnumerable<RimPlace> Along(ImmutableArray<Point2> loop, double step)
    {
        double since = step / 2;
        for (int i = 0; i < loop.Length; i++)
        {
            (Point2 from, Point2 to) = (loop[i], loop[(i + 1) % loop.Length]);
            double length = Point2.Distance(from, to);
            Point2 along = 1 / length * (to - from);
            for (; since < length; since += step)
            {
                yield return new RimPlace(from + (since * along), new Point2(along.Y, 0 - along.X));
            }

            since -= length;
        }
    }
}
