using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Rendering;

/// <summary>
/// Joins segments that lie in one level or upright line: a rim seen from the side is a hundred short edges over each other, and one line
/// on paper. Others are kept as they are, each once.
/// </summary>
internal static class LineJoining
{
    // Places are the same to a hundredth of a millimetre.
    private const double Cell = 0.01;

    public static ImmutableArray<(Point2 From, Point2 To)> Joined(IEnumerable<(Point2 From, Point2 To)> segments, double shortest)
    {
        var level = new SortedDictionary<long, List<(long From, long To)>>();
        var upright = new SortedDictionary<long, List<(long From, long To)>>();
        var other = new SortedSet<(long, long, long, long)>();
        foreach ((Point2 from, Point2 to) in segments)
        {
            (long ax, long ay, long bx, long by) = (Rounded(from.X), Rounded(from.Y), Rounded(to.X), Rounded(to.Y));
            if (Math.Abs(ay - by) <= 1)
            {
                Add(level, ay, ax, bx);
            }
            else if (Math.Abs(ax - bx) <= 1)
            {
                Add(upright, ax, ay, by);
            }
            else if (Point2.Distance(from, to) >= shortest)
            {
                other.Add((ax, ay).CompareTo((bx, by)) <= 0 ? (ax, ay, bx, by) : (bx, by, ax, ay));
            }
        }

        var joined = ImmutableArray.CreateBuilder<(Point2, Point2)>();
        joined.AddRange(Runs(level, shortest).Select(run => (At(run.From, run.Line), At(run.To, run.Line))));
        joined.AddRange(Runs(upright, shortest).Select(run => (At(run.Line, run.From), At(run.Line, run.To))));
        joined.AddRange(other.Select(s => (At(s.Item1, s.Item2), At(s.Item3, s.Item4))));
        return joined.ToImmutable();
    }

    private static void Add(SortedDictionary<long, List<(long From, long To)>> lines, long line, long a, long b)
    {
        if (!lines.TryGetValue(line, out List<(long From, long To)>? runs))
        {
            lines[line] = runs = [];
        }

        runs.Add((Math.Min(a, b), Math.Max(a, b)));
    }

    private static IEnumerable<(long Line, long From, long To)> Runs(SortedDictionary<long, List<(long From, long To)>> lines,
        double shortest)
    {
        foreach ((long line, List<(long From, long To)> runs) in lines)
        {
            runs.Sort();
            long from = runs[0].From;
            long to = runs[0].To;
            foreach ((long a, long b) in runs.Append((long.MaxValue, long.MaxValue)))
            {
                if (a <= to + 1)
                {
                    to = Math.Max(to, b);
                    continue;
                }

                if ((to - from) * Cell >= shortest)
                {
                    yield return (line, from, to);
                }

                (from, to) = (a, b);
            }
        }
    }

    private static long Rounded(double value) => (long)Math.Floor((value / Cell) + 0.5);

    private static Point2 At(long x, long y) => new(x * Cell, y * Cell);
}
