using ShellForge.Geometry.Numerics;
using ShellForge.Import.Files;

namespace ShellForge.Import.Drawing;

/// <summary>What strokes joined up to.</summary>
/// <param name="Loops">Closed loops, the largest first.</param>
/// <param name="OpenChains">Number of connected pieces that don't close.</param>
/// <param name="OpenLine">Line of the first stroke of the longest open piece; 0 without one.</param>
/// <param name="OpenLength">Length in mm of the longest open piece.</param>
/// <param name="OpenGap">Distance in mm between the loose ends of the longest open piece.</param>
/// <param name="OpenBounds">Box round the longest open piece.</param>
/// <param name="LargestGap">Largest distance in mm bridged in any loop.</param>
/// <param name="Repeated">Strokes drawn twice and used once.</param>
/// <param name="RepeatedLoops">Closed loops drawn twice and used once.</param>
/// <param name="Branches">Strokes left out because three or more met at a point.</param>
/// <param name="BranchLine">Line of the first of them.</param>
internal sealed record ChainedStrokes(
    IReadOnlyList<OutlineLoop> Loops,
    int OpenChains,
    int OpenLine,
    double OpenLength,
    double OpenGap,
    Box2 OpenBounds,
    double LargestGap,
    int Repeated,
    int RepeatedLoops,
    int Branches,
    int BranchLine);

/// <summary>
/// Joins strokes end to end whatever their order and direction: ends that coincide first, then loose ends that nearly meet,
/// nearest first. What hangs loose after that is open; where more than two strokes meet, the outer border is followed.
/// </summary>
internal static class StrokeChaining
{
    public static ChainedStrokes Run(IReadOnlyList<PenStroke> strokes) => Run(strokes, countRepeated: true);

    private static ChainedStrokes Run(IReadOnlyList<PenStroke> strokes, bool countRepeated)
    {
        var loops = new List<OutlineLoop>();
        var graph = new StrokeGraph();
        int repeated = 0;
        int repeatedLoops = 0;
        var circles = new HashSet<(long, long, long)>();
        foreach (PenStroke stroke in strokes)
        {
            EdgeSegment s = stroke.Segment;
            double ends = Point2.Distance(s.From, s.To);
            if (s.IsArc && Math.Abs(s.SweepDegrees) > 180 && ends <= EcadTolerances.Joint)
            {
                if (s.Radius > EcadTolerances.SamePoint && circles.Add((Cell(s.Centre.X), Cell(s.Centre.Y), Cell(s.Radius))))
                {
                    loops.Add(new OutlineLoop([EdgeSegment.Circle(s.Centre, s.From)], stroke.Line, ends));
                }
                else
                {
                    repeated++;
                    repeatedLoops++;
                }
            }
            else if (s.Length > EcadTolerances.ShortestStroke)
            {
                graph.Add(stroke);
            }
        }

        // Before joining, so that an edge drawn twice still has loose ends; after it, since joining can make two strokes one.
        repeated += graph.DropRepeated();
        graph.JoinLooseEnds();
        repeated += graph.DropRepeated();
        LoopTracer.Traced traced = LoopTracer.Trace(graph);
        loops.AddRange(traced.Loops.Where(l => l.Area > EcadTolerances.SamePoint));
        loops.Sort((a, b) => a.Area != b.Area ? b.Area.CompareTo(a.Area) : a.Line.CompareTo(b.Line));
        if (countRepeated && repeated > repeatedLoops)
        {
            List<PenStroke> dropped = [.. Enumerable.Range(0, graph.StrokeCount).Where(graph.IsDropped).Select(graph.StrokeAt)];
            repeatedLoops += Run(dropped, countRepeated: false).Loops.Count;
        }

        double gap = loops.Count == 0 ? 0 : loops.Max(l => l.LargestGap);
        return new ChainedStrokes(
            loops, traced.OpenChains, traced.OpenLine, traced.OpenLength, traced.OpenGap, traced.OpenBounds, gap, repeated, repeatedLoops,
            traced.Branches, traced.BranchLine);
    }

    private static long Cell(double value) => (long)Math.Round(value / EcadTolerances.SamePoint / 4, MidpointRounding.AwayFromZero);
}
