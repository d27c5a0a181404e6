using ShellForge.Geometry.Numerics;
using ShellForge.Import.Drawing;
using ShellForge.Import.Files;

namespace ShellForge.Import.Drill;

/// <summary>
/// Decides how a drill file's numbers are read. What the file states holds; what it leaves open is tried, and the reading
/// whose holes land inside the outline is taken and named. A stated reading that misses the outline is kept, and the one that
/// would fit is told.
/// </summary>
internal static class DrillResolution
{
    // Enough hits to tell a scale; a file of a hundred thousand needs no more.
    private const int Sampled = 2000;

    private static readonly (int Integer, int Decimal)[] InchDigits = [(2, 4), (2, 3), (2, 5), (3, 4), (3, 5), (3, 3)];
    private static readonly (int Integer, int Decimal)[] MetricDigits = [(3, 3), (4, 2), (3, 2), (4, 3), (4, 4), (3, 4), (2, 4), (3, 5),
        (4, 5)];

    public static DrillFacts Resolve(DrillProgram program, OutlineLoop? outline, IReadOnlyList<OutlineLoop> openings, EcadLog log)
    {
        if (program.HasRepeats)
        {
            log.Error(program.File, 1, "ecad-panel", "a drill pattern is stepped and repeated: this is a panel",
                "export the drill file of the single board");
        }

        List<DrillReading> candidates = [.. Candidates(program)];
        DrillReading first = candidates[0];
        if (program.Steps.IsEmpty || (candidates.Count == 1 && outline is null))
        {
            return DrillRun.Run(program, first, log);
        }

        if (outline is null)
        {
            DrillReading plausible = candidates.FirstOrDefault(c => IsPlausible(Extent(program, c)), first);
            Say(program, plausible, first, log, "the first reading of a plausible size is taken");
            return DrillRun.Run(program, plausible, log);
        }

        DrillReading best = Best(program, candidates, outline, openings, out double inside);
        if (inside < 0.5 && candidates.Count >= 1)
        {
            Explain(program, first, outline, openings, log);
            return DrillRun.Run(program, first, log);
        }

        Say(program, best, first, log, "its holes land inside the outline");
        return DrillRun.Run(program, best, log);
    }

    private static void Say(DrillProgram program, DrillReading taken, DrillReading usual, EcadLog log, string why)
    {
        DrillStatedFormat stated = program.Stated;
        string missing = stated.Unit is null ? "the unit" : program.AllPoints ? ""
            : stated.Zeros == DrillZeros.Unknown ? "which zeros are kept"
            : stated.DecimalDigits is null ? "the digits" : "";
        if (missing.Length == 0)
        {
            return;
        }

        string message =
            $"{missing} {(missing.EndsWith('s') && missing != "which zeros are kept" ? "are" : "is")} not stated; read as "
                + $"{taken.InWords()}: {why}";
        if (taken == usual && stated.Unit is not null)
        {
            log.Note(program.File, 1, "drill-format", message);
        }
        else
        {
            log.Warn(program.File, 1, "drill-format", message);
        }
    }

    private static void Explain(DrillProgram program, DrillReading first, OutlineLoop outline, IReadOnlyList<OutlineLoop> openings,
        EcadLog log)
    {
        var all = new List<DrillReading>();
        foreach (double unit in new[] { 1, 25.4 })
        {
            foreach ((int i, int d) in unit == 1 ? MetricDigits : InchDigits)
            {
                all.Add(new DrillReading(unit, i, d, false));
                all.Add(new DrillReading(unit, i, d, true));
            }
        }

        DrillReading other = Best(program, all, outline, openings, out double inside);
        string fit = inside > 0.9 ? $"; read as {other.InWords()} they would fit" : "";
        log.Warn(
            program.File, 1, "drill-outside", $"most holes lie outside the outline when read as {first.InWords()}{fit}",
            "export drill and outline with the same unit and origin");
    }

    private static IEnumerable<DrillReading> Candidates(DrillProgram program)
    {
        DrillStatedFormat stated = program.Stated;
        double[] units = stated.Unit is { } unit ? [unit] : ToolsLookInch(program) ? [25.4, 1] : [1, 25.4];
        bool[] leading = stated.Zeros switch
        {
            DrillZeros.LeadingKept => [true],
            DrillZeros.TrailingKept => [false],
            _ => [false, true],
        };
        foreach (double u in units)
        {
            (int Integer, int Decimal)[] digits = stated is { IntegerDigits: { } i, DecimalDigits: { } d } ? [(i, d)]
                : u == 1 ? MetricDigits : InchDigits;
            foreach (bool kept in leading)
            {
                var seen = new HashSet<int>();
                foreach ((int integer, int decimals) in program.AllPoints ? digits[..1] : digits)
                {
                    // Digits on the dropped side change nothing.
                    if (seen.Add(kept ? integer : decimals))
                    {
                        yield return new DrillReading(u, integer, decimals, kept);
                    }
                }

                if (program.AllPoints)
                {
                    break;
                }
            }
        }
    }

    // Inch drills run from 0.008 to 0.25; the same numbers in mm would be finer than any drill.
    private static bool ToolsLookInch(DrillProgram program)
    {
        List<double> sizes = [.. program.Tools.Where(t => t.Diameter.HasPoint).Select(t => t.Diameter.Value).Order()];
        return sizes.Count > 0 && sizes[sizes.Count / 2] < 0.14;
    }

    private static DrillReading Best(
        DrillProgram program, List<DrillReading> candidates, OutlineLoop outline, IReadOnlyList<OutlineLoop> openings, out double inside)
    {
        DrillReading best = candidates[0];
        double bestScore = -1;
        inside = 0;
        double board = outline.Bounds.Size.Length;
        foreach (DrillReading candidate in candidates)
        {
            List<Point2> points = Points(program, candidate);
            double share = points.Count == 0 ? 0 : points.Count(p => IsInside(p, outline)) / (double)points.Count;
            double extent = Box2.Of(points).Size.Length / board;

            // All inside first; then holes that meet drawn circles; then not shrunk to a speck; then the usual reading.
            double score = Math.Round(share, 2) + (2 * Matches(points, openings));
            score += candidate == candidates[0] && extent > 0.1 ? 0.5 : 0.4 * Math.Min(extent, 1);
            if (score > bestScore)
            {
                (best, bestScore, inside) = (candidate, score, share);
            }
        }

        return best;
    }

    private static double Matches(List<Point2> points, IReadOnlyList<OutlineLoop> openings)
    {
        List<FittedCircle> circles = [.. openings.Where(l => l.Circle is not null).Take(50).Select(l => l.Circle!.Value)];
        if (circles.Count == 0)
        {
            return 0;
        }

        int met = circles.Count(c => points.Exists(p => Point2.Distance(p, c.Centre) <= EcadTolerances.SameOpening));
        return (double)met / circles.Count;
    }

    private static bool IsInside(Point2 p, OutlineLoop outline)
    {
        Box2 b = outline.Bounds;
        double m = EcadTolerances.InsideMargin;
        return p.X >= b.Min.X - m && p.X <= b.Max.X + m && p.Y >= b.Min.Y - m && p.Y <= b.Max.Y + m
            && (outline.Contains(p) || outline.Distance(p, 2 * m) <= m);
    }

    private static bool IsPlausible(double extent) => extent is >= EcadTolerances.SmallestBoard and <= EcadTolerances.LargestBoard;

    private static double Extent(DrillProgram program, DrillReading reading) => Box2.Of(Points(program, reading)).Size.Length;

    private static List<Point2> Points(DrillProgram program, DrillReading reading)
    {
        DrillProgram part = program.Steps.Length <= Sampled ? program : program with { Steps = program.Steps[..Sampled] };
        DrillFacts facts = DrillRun.Run(part, reading, null);
        return [.. facts.Holes.Select(h => h.At), .. facts.Slots.SelectMany(s => s.Path.Take(EcadLimits.Depth))];
    }
}
