using System.Collections.Immutable;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Checks.PrintTime;

/// <summary>Areas as the strokes that fill them: level lines in a frame turned by 45 degrees, as slicers lay them.</summary>
internal static class Hatch
{
    private static readonly double HalfRoot = Math.Sqrt(0.5);

    /// <summary>The strokes of a region, at equal distances.</summary>
    public static ScanLines Of(Region region, double step) =>
        ScanLines.Of(region.Loops.Select(loop => loop.Select(Turned).ToImmutableArray()), step);

    /// <summary>
    /// Strokes joined to lines that go to and fro: a stroke goes on in the next one where they lie side by side.
    /// </summary>
    /// <param name="area">The strokes.</param>
    /// <param name="kind">What the lines are for.</param>
    /// <param name="every">Takes each so manieth stroke only, for infill.</param>
    public static IReadOnlyList<LaidLine> Lines(ScanLines area, LineKind kind, int every)
    {
        var lines = new List<List<Point2>>();
        List<(double From, double To, List<Point2> Line)> before = [];
        foreach ((int row, double[] ends) in area.Rows.Where(row => row.Number % every == 0))
        {
            var here = new List<(double From, double To, List<Point2> Line)>();
            double y = (row + 0.5) * area.Step;
            for (int i = 0; i < ends.Length; i += 2)
            {
                (double from, double to) = (ends[i], ends[i + 1]);
                int at = before.FindIndex(stroke => stroke.From < to && from < stroke.To);
                List<Point2> line = at < 0 ? [] : before[at].Line;
                if (at < 0)
                {
                    lines.Add(line);
                }
                else
                {
                    before.RemoveAt(at);
                }

                bool isForth = line.Count == 0 || Math.Abs(line[^1].X - from) <= Math.Abs(line[^1].X - to);
                line.Add(new Point2(isForth ? from : to, y));
                line.Add(new Point2(isForth ? to : from, y));
                here.Add((from, to, line));
            }

            before = here;
        }

        return [.. lines.Select(line => new LaidLine(kind, [.. line.Select(Back)]))];
    }

    private static Point2 Turned(Point2 p) => new(HalfRoot * (p.X + p.Y), HalfRoot * (p.Y - p.X));

    private static Point2 Back(Point2 p) => new(HalfRoot * (p.X - p.Y), HalfRoot * (p.X + p.Y));
}
