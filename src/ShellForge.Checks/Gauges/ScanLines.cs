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
    private readonly double _step;
    private readonly int _first;

    /// <summary>For each line the ends of its stretches, rising: from the even ones to the odd ones there is material.</summary>
    private readonly double[][] _ends;

    private ScanLines(double step, int first, double[][] ends) => (_step, _first, _ends) = (step, first, ends);

    /// <summary>Area, mm2.</summary>
    public double Area => _step * _ends.Sum(line => Enumerable.Range(0, line.Length / 2).Sum(i => line[(2 * i) + 1] - line[2 * i]));

    /// <summary>Distance of the lines, mm.</summary>
    public double Step => _step;

    /// <summary>Each line: its number, counted from y = 0, and the ends of its stretches, rising.</summary>
    public IEnumerable<(int Number, double[] Ends)> Rows => _ends.Select((line, i) => (_first + i, line));

    /// <summary>The lines of a region.</summary>
    /// <param name="region">The region.</param>
    /// <param name="step">Distance of the lines, mm; the same for all regions that are compared.</param>
    public static ScanLines Of(Region region, double step) => Of(region.Loops, step);

    /// <summary>The lines of what outlines enclose.</summary>
    /// <param name="outlines">The outlines, holes among them.</param>
    /// <param name="step">Distance of the lines, mm; the same for all that are compared.</param>
    public static ScanLines Of(IEnumerable<ImmutableArray<Point2>> outlines, double step)
    {
        ImmutableArray<Point2>[] loops = [.. outlines];
        if (loops.Length == 0)
        {
            return new ScanLines(step, 0, []);
        }

        int first = LineAbove(loops.Min(loop => loop.Min(p => p.Y)), step);
        int behind = LineAbove(loops.Max(loop => loop.Max(p => p.Y)), step);
        List<double>[] crossings = [.. Enumerable.Range(0, Math.Max(0, behind - first)).Select(_ => new List<double>())];
        foreach (ImmutableArray<Point2> loop in loops)
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
        int from = Math.Max(_first, other._first);
        int to = Math.Min(_first + _ends.Length, other._first + other._ends.Length);
        return new ScanLines(
            _step, from,
            [.. Enumerable.Range(from, Math.Max(0, to - from))
                .Select(line => Shared(_ends[line - _first], other._ends[line - other._first]))]);
    }

    /// <summary>What of this region another leaves; stretches shorter than a length are dropped.</summary>
    public ScanLines Less(ScanLines other, double shortest) => new(
        _step, _first, [.. Enumerable.Range(_first, _ends.Length).Select(line => Less(_ends[line - _first], other.Line(line), shortest))]);

    /// <summary>What is in this region or another; the two share nothing.</summary>
    public ScanLines And(ScanLines other)
    {
        int from = Math.Min(_first, other._first);
        int to = Math.Max(_first + _ends.Length, other._first + other._ends.Length);
        return new ScanLines(_step, from, [.. Enumerable.Range(from, to - from).Select(line => Joined(Line(line), other.Line(line)))]);
    }

    /// <summary>The stretches cut into connected pieces: those that lie side by side in neighbouring lines belong together.</summary>
    public IEnumerable<ScanLines> Pieces()
    {
        var pieces = new List<List<(int Line, double From, double To)>>();
        List<(double From, double To, List<(int Line, double From, double To)> Piece)> below = [];
        for (int line = 0; line < _ends.Length; line++)
        {
            List<(double From, double To, List<(int Line, double From, double To)> Piece)> here = [];
            for (int i = 0; i < _ends[line].Length; i += 2)
            {
                (double from, double to) = (_ends[line][i], _ends[line][i + 1]);
                List<(int Line, double From, double To)>[] met =
                    [.. below.Concat(here).Where(b => b.From < to && from < b.To).Select(b => b.Piece).Distinct()];
                List<(int Line, double From, double To)> piece = met.Length > 0 ? met[0] : [];
                foreach (List<(int Line, double From, double To)> other in met.Skip(1))
                {
                    piece.AddRange(other);
                    pieces.Remove(other);
                    below = [.. below.Select(b => b.Piece == other ? b with { Piece = piece } : b)];
                    here = [.. here.Select(b => b.Piece == other ? b with { Piece = piece } : b)];
                }

                if (met.Length == 0)
                {
                    pieces.Add(piece);
                }

                piece.Add((line, from, to));
                here.Add((from, to, piece));
            }

            below = here;
        }

        return pieces.Select(piece =>
        {
            int from = piece.Min(stroke => stroke.Line);
            ILookup<int, (int Line, double From, double To)> byLine = piece.ToLookup(stroke => stroke.Line);
            return new ScanLines(_step, _first + from, [.. Enumerable.Range(from, piece.Max(stroke => stroke.Line) - from + 1)
                .Select(line =>
                    byLine[line].OrderBy(stroke => stroke.From).SelectMany(stroke => new[] { stroke.From, stroke.To }).ToArray())]);
        });
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

    private double[] Line(int line) => line >= _first && line < _first + _ends.Length ? _ends[line - _first] : [];

    private static double[] Less(double[] a, double[] b, double shortest)
    {
        var left = new List<double>();
        for (int i = 0; i < a.Length; i += 2)
        {
            double from = a[i];
            for (int j = 0; j < b.Length && b[j] < a[i + 1]; j += 2)
            {
                if (b[j + 1] > from)
                {
                    Add(left, from, b[j], shortest);
                    from = Math.Max(from, b[j + 1]);
                }
            }

            Add(left, from, a[i + 1], shortest);
        }

        return [.. left];
    }

    private static void Add(List<double> ends, double from, double to, double shortest)
    {
        if (to - from > shortest)
        {
            ends.Add(from);
            ends.Add(to);
        }
    }

    // Stretches that share nothing, in their order; those that touch become one.
    private static double[] Joined(double[] a, double[] b)
    {
        var all = new List<double>();
        foreach ((double from, double to) in Stretches(a).Concat(Stretches(b)).OrderBy(stretch => stretch.From))
        {
            if (all.Count > 0 && from <= all[^1])
            {
                all[^1] = Math.Max(all[^1], to);
            }
            else
            {
                all.Add(from);
                all.Add(to);
            }
        }

        return [.. all];
    }

    private static IEnumerable<(double From, double To)> Stretches(double[] ends) =>
        Enumerable.Range(0, ends.Length / 2).Select(i => (ends[2 * i], ends[(2 * i) + 1]));

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
