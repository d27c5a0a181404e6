using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Checks.Gauges;

/// <summary>
/// A region as stretches of level lines at equal distances. What several regions share costs one walk along each line, where an overlay of
/// their outlines costs a thousand times as much; areas are right to the width of a line along slanted outlines, and mostly far better.
/// </summary>
internal sealed class ScanLines
{
    private readonly double step;
    private readonly int first;

    /// <summary>For each line the ends of its stretches, rising: from the even ones to the odd ones there is material.</summary>
    private readonly double[][] ends;

    private ScanLines(double step, int first, double[][] ends) => (this.step, this.first, this.ends) = (step, first, ends);

    /// <summary>Area, mm2.</summary>
    public double Area => step * ends.Sum(line => Enumerable.Range(0, line.Length / 2).Sum(i => line[(2 * i) + 1] - line[2 * i]));

    /// <summary>The lines of a region.</summary>
    /// <param name="region">The region.</param>
    /// <param name="step">Distance of the lines, mm; the same for all regions that are compared.</param>
    public static ScanLines Of(Region region, double step)
    {
        if (region.IsEmpty)
        {
            return new ScanLines(step, 0, []);
        }

        int first = LineAbove(region.Bounds.Min.Y, step);
        List<double>[] crossings = [.. Enumerable.Range(0, Math.Max(0, LineAbove(region.Bounds.Max.Y, step) - first)).Select(_ => new List<double>())];
        foreach (ImmutableArray<Point2> loop in region.Loops)
        {
            for (int i = 0; i < loop.Length; i++)
            {
                Point2 a = loop[i];
                Point2 b = loop[i + 1 < loop.Length ? i + 1 : 0];
                int end = LineAbove(Math.Max(a.Y, b.Y), step);
                for (int line = LineAbove(Math.Min(a.Y, b.Y), step); line < end; line++)
                {
                    crossings[line - first].Add(Crossing(a, b, (line + 0.5) * step));
                }
            }
        }

        return new ScanLines(step, first, [.. crossings.Select(Rising)]);
    }

    /// <summary>What two regions share.</summary>
    public ScanLines Shared(ScanLines other)
    {
        int from = Math.Max(first, other.first);
        int to = Math.Min(first + ends.Length, other.first + other.ends.Length);
        return new ScanLines(
            step, from, [.. Enumerable.Range(from, Math.Max(0, to - from)).Select(line => Shared(ends[line - first], other.ends[line - other.first]))]);
    }

    /// <summary>Where one level line crosses outlines, rising.</summary>
    public static double[] Crossings(IEnumerable<ImmutableArray<Point2>> loops, double y)
    {
        var crossings = new List<double>();
        foreach (ImmutableArray<Point2> loop in loops)
        {
            for (int i = 0; i < loop.Length; i++)
            {
                Point2 a = loop[i];
                Point2 b = loop[i + 1 < loop.Length ? i + 1 : 0];
                if ((a.Y <= y) != (b.Y <= y))
                {
                    crossings.Add(Crossing(a, b, y));
                }
            }
        }

        return Rising(crossings);
    }

    private static double Crossing(Point2 a, Point2 b, double y) => a.X + ((b.X - a.X) * (y - a.Y) / (b.Y - a.Y));

    // The first line at or above a height: a side is crossed by the lines from its lower end on and below its upper end.
    private static int LineAbove(double y, double step) => (int)Math.Ceiling((y / step) - 0.5);

    private static double[] Rising(List<double> crossings)
    {
        crossings.Sort();
        return [.. crossings];
    }

    private static double[] Shared(double[] a, double[] b)
    {
        var shared = new List<double>();
        for (int i = 0, j = 0; i < a.Length && j < b.Length;)
        {
            double from = Math.Max(a[i], b[j]);
            double to = Math.Min(a[i + 1], b[j + 1]);
            if (from < to)
            {
                shared.Add(from);
                shared.Add(to);
            }

            if (a[i + 1] < b[j + 1])
            {
                i += 2;
            }
            else
            {
                j += 2;
            }
        }

        return [.. shared];
    }
}
