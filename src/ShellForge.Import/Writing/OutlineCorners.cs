using ShellForge.Geometry.Numerics;
using ShellForge.Import.Drawing;
using ShellForge.Import.Files;

namespace ShellForge.Import.Writing;

/// <summary>
/// Writes a loop as few corners: straight runs become one line, runs of short chords that follow a circle become one arc.
/// What is written stays within the circle tolerance of what was drawn.
/// </summary>
internal static class OutlineCorners
{
    private const int FewestChords = 4;
    private const int WidestArc = 350;

    /// <summary>Corners "[x, y]" or "[x, y, arc]" in order, the first being where the loop starts.</summary>
    public static IEnumerable<string> Of(OutlineLoop loop)
    {
        foreach (EdgeSegment s in Simplified(loop))
        {
            yield return s.IsArc
                ? $"[{Numeral.Text(s.To.X)}, {Numeral.Text(s.To.Y)}, {Numeral.Text(s.SweepDegrees)}]"
                : $"[{Numeral.Text(s.To.X)}, {Numeral.Text(s.To.Y)}]";
        }
    }

    public static List<EdgeSegment> Simplified(OutlineLoop loop)
    {
        List<EdgeSegment> all = FromCorner([.. loop.Segments.Where(s => s.IsFullCircle || s.Length > 4 * EcadTolerances.SamePoint)]);
        var result = new List<EdgeSegment>();
        int i = 0;
        while (i < all.Count)
        {
            if (all[i].IsFullCircle)
            {
                // Two halves: an arc can't lead to where it began.
                Point2 middle = all[i].At(0.5);
                result.Add(all[i] with { To = middle, SweepDegrees = all[i].SweepDegrees / 2 });
                result.Add(all[i] with { From = middle, SweepDegrees = all[i].SweepDegrees / 2 });
                i++;
                continue;
            }

            (int length, EdgeSegment piece) = Longest(all, i);
            result.Add(piece);
            i += length;
        }

        return result;
    }

    // Beginning in the middle of a run would cut it in two: begin where the direction changes most.
    private static List<EdgeSegment> FromCorner(IReadOnlyList<EdgeSegment> segments)
    {
        int sharpest = 0;
        double most = -1;
        for (int i = 0; i < segments.Count && segments.Count > 1; i++)
        {
            EdgeSegment before = segments[(i + segments.Count - 1) % segments.Count];
            Point2 a = before.Reversed.StartDirection();
            double turn = 1 + Point2.Dot(a, segments[i].StartDirection());
            if (turn > most)
            {
                (sharpest, most) = (i, turn);
            }
        }

        return [.. segments.Skip(sharpest), .. segments.Take(sharpest)];
    }

    // Doubling, then halving back: each length is tried on all its points, and the whole stays near linear.
    private static (int Length, EdgeSegment Piece) Longest(List<EdgeSegment> all, int start)
    {
        int best = 1;
        EdgeSegment piece = all[start];
        if (piece.IsArc)
        {
            return (1, piece);
        }

        int step = 2;
        int limit = all.Count - start;
        while (step <= limit && One(all, start, step) is { } longer)
        {
            (best, piece) = (step, longer);
            step = step < FewestChords ? step + 1 : step * 2;
        }

        // Short runs may be no arc yet while longer ones are.
        if (best < FewestChords && limit >= FewestChords && One(all, start, FewestChords) is { } arc)
        {
            (best, piece) = (FewestChords, arc);
            step = 2 * FewestChords;
            while (step <= limit && One(all, start, step) is { } longer)
            {
                (best, piece) = (step, longer);
                step *= 2;
            }
        }

        int high = Math.Min(step, limit + 1);
        while (high - best > 1)
        {
            int middle = (best + high) / 2;
            if (One(all, start, middle) is { } longer)
            {
                (best, piece) = (middle, longer);
            }
            else
            {
                high = middle;
            }
        }

        return (best, piece);
    }

    private static EdgeSegment? One(List<EdgeSegment> all, int start, int count)
    {
        Point2 from = all[start].From;
        Point2 to = all[start + count - 1].To;
        for (int i = start; i < start + count; i++)
        {
            if (all[i].IsArc)
            {
                return null;
            }
        }

        EdgeSegment line = EdgeSegment.Line(from, to);
        if (from != to && Follows(all, start, count, line, EcadTolerances.SamePoint * 4))
        {
            return line;
        }

        if (count < FewestChords)
        {
            return null;
        }

        Point2 middle = all[start + (count / 2)].From;
        EdgeSegment arc = CurveArcs.Through(from, middle, to);
        return arc.IsArc && Math.Abs(arc.SweepDegrees) <= WidestArc && from != to
            && Follows(all, start, count, arc, EcadTolerances.CircleFit / 2)
            && ChordsAreShort(all, start, count, arc)
                ? arc
                : null;
    }

    private static bool Follows(List<EdgeSegment> all, int start, int count, EdgeSegment piece, double tolerance)
    {
        for (int i = start; i < start + count; i++)
        {
            if (piece.Distance(all[i].To) > tolerance)
            {
                return false;
            }
        }

        return true;
    }

    private static bool ChordsAreShort(List<EdgeSegment> all, int start, int count, EdgeSegment arc)
    {
        double allowed = Math.Max(arc.Radius * EcadTolerances.CircleChordRatio, EcadTolerances.CircleChord);
        for (int i = start; i < start + count; i++)
        {
            if (arc.Distance(all[i].At(0.5)) > Math.Min(allowed, 4 * EcadTolerances.CircleChord))
            {
                return false;
            }
        }

        return true;
    }
}
