using ShellForge.Geometry.Numerics;
using ShellForge.Import.Drawing;
using ShellForge.Import.Files;

namespace ShellForge.Import.Merging;

/// <summary>The board edge found in a drawing.</summary>
/// <param name="Outer">The outer edge.</param>
/// <param name="Cutouts">Closed loops inside it, the largest first.</param>
/// <param name="Decoys">What was drawn besides and is no edge, in words.</param>
internal sealed record SelectedProfile(OutlineLoop Outer, IReadOnlyList<OutlineLoop> Cutouts, IReadOnlyList<string> Decoys);

/// <summary>Tells the board edge from text, dimensions, frames and other boards among the closed loops of a drawing.</summary>
internal static class ProfileSelection
{
    // Comparing every loop with every other is bounded; a drawing beyond it is no board edge.
    private const long MostComparisons = 20_000_000;

    public static SelectedProfile? Select(
        ChainedStrokes chained, string file, IReadOnlyList<Point2> evidence, EcadLog log)
    {
        IReadOnlyList<OutlineLoop> loops = chained.Loops;
        if (loops.Count == 0)
        {
            NoLoop(chained, file, log);
            return null;
        }

        if (loops.Count > EcadLimits.Loops || (long)loops.Count * loops[0].Segments.Count > MostComparisons)
        {
            log.Error(file, loops[0].Line, "ecad-too-many", $"{loops.Count} closed loops: more than a board edge has",
                "export the board edge alone");
            return null;
        }

        OutlineLoop outer = loops[0];
        if (IsLargerOpen(chained, outer))
        {
            NoLoop(chained, file, log);
            return null;
        }

        if (FramedBoard(loops, evidence) is { } framed)
        {
            log.Warn(file, outer.Line, "ecad-frame",
                $"the outermost shape ({Size(outer)}) holds no holes of its own and is taken for a drawing frame; the board is the "
                    + $"{Size(framed)} shape inside");
            outer = framed;
        }

        var cutouts = new List<OutlineLoop>();
        var decoys = new List<string>();
        var boards = new List<OutlineLoop>();
        foreach (OutlineLoop loop in loops)
        {
            if (ReferenceEquals(loop, outer) || loop.Area > outer.Area)
            {
                continue;
            }

            switch (Relation(loop, outer))
            {
                case LoopRelation.Inside:
                    cutouts.Add(loop);
                    break;
                case LoopRelation.Outside or LoopRelation.Crossing when loop.Area >= EcadTolerances.SecondBoardArea * outer.Area:
                    boards.Add(loop);
                    break;
                case LoopRelation.Crossing:
                    decoys.Add($"a closed shape of {Size(loop)} across the edge (line {loop.Line})");
                    break;
                default:
                    decoys.Add($"a closed shape of {Size(loop)} beside the board (line {loop.Line})");
                    break;
            }
        }

        if (boards.Count > 0)
        {
            log.Error(
                file, boards[0].Line, "ecad-panel",
                $"{boards.Count + 1} shapes of board size side by side: {Size(outer)} (line {outer.Line}), "
                    + $"{string.Join(", ", boards.Take(3).Select(b => $"{Size(b)} (line {b.Line})"))}{(boards.Count > 3 ? ", ..." : "")}",
                "the outline of one single board; export that alone");
            return null;
        }

        if (SelfCrossing.Of(outer) is { } crossing)
        {
            log.Error(
                file, outer.Line, "ecad-outline-crosses",
                $"the outline crosses itself near ({Numeral.Text(crossing.X)}, {Numeral.Text(crossing.Y)})",
                "draw the edge as one simple line and export again");
            return null;
        }

        foreach (OutlineLoop loop in cutouts.FindAll(c => SelfCrossing.Of(c) is not null))
        {
            cutouts.Remove(loop);
            decoys.Add($"a shape of {Size(loop)} that crosses itself (line {loop.Line})");
        }

        IslandsOut(cutouts, decoys);
        Doubled(outer, cutouts, decoys);
        if (chained.OpenChains > 0)
        {
            decoys.Add(
                $"{chained.OpenChains} open stroke{(chained.OpenChains == 1 ? "" : "s")} (text, dimensions; from line {chained.OpenLine})");
        }

        if (chained.Branches > 0)
        {
            decoys.Add($"{chained.Branches} strokes that end on the edge (from line {chained.BranchLine})");
        }

        return new SelectedProfile(outer, cutouts, decoys);
    }

    public static string Size(OutlineLoop loop) =>
        loop.Circle is { } c ? $"{Numeral.Text(c.Diameter)} mm round"
            : $"{Numeral.Text(loop.Bounds.Size.X)} x {Numeral.Text(loop.Bounds.Size.Y)} mm";

    private static void NoLoop(ChainedStrokes chained, string file, EcadLog log)
    {
        if (chained.OpenChains == 0)
        {
            log.Error(file, 1, "ecad-outline-empty", "no board edge is drawn in this file",
                "draw the outline on the board edge layer and export again");
            return;
        }

        string gap = chained.OpenGap > 0 ? $" by {Numeral.Text(chained.OpenGap)} mm" : "";
        log.Error(
            file, chained.OpenLine, "ecad-outline-open",
            $"the outline that begins here is open{gap}; ends up to {Numeral.Text(EcadTolerances.Joint)} mm apart are joined",
            "close it in the layout program and export again");
    }

    // The true outline may be open while a hole inside it is closed: then the hole must not become the board.
    private static bool IsLargerOpen(ChainedStrokes chained, OutlineLoop outer)
    {
        if (chained.OpenChains == 0 || chained.OpenBounds.IsEmpty)
        {
            return false;
        }

        Box2 open = chained.OpenBounds;
        Box2 closed = outer.Bounds;
        bool around = open.Min.X <= closed.Min.X && open.Min.Y <= closed.Min.Y && open.Max.X >= closed.Max.X && open.Max.Y >= closed.Max.Y;
        return around && chained.OpenLength > outer.Segments.Sum(s => s.Length);
    }

    // A frame round the drawing is a rectangle with all the holes in one shape inside it.
    private static OutlineLoop? FramedBoard(IReadOnlyList<OutlineLoop> loops, IReadOnlyList<Point2> evidence)
    {
        OutlineLoop outer = loops[0];
        if (outer.Segments.Count != 4 || outer.Segments.Any(s => s.IsArc) || evidence.Count < 3)
        {
            return null;
        }

        foreach (OutlineLoop loop in loops.Skip(1).Take(8))
        {
            bool isBoard = loop.Area >= EcadTolerances.SmallestBoard * EcadTolerances.SmallestBoard * 4
                && Relation(loop, outer) == LoopRelation.Inside
                && evidence.Count(loop.Contains) >= 0.9 * evidence.Count;
            if (isBoard)
            {
                return loop;
            }
        }

        return null;
    }

    private enum LoopRelation
    {
        Inside,
        Outside,
        Crossing,
    }

    private static LoopRelation Relation(OutlineLoop loop, OutlineLoop outer)
    {
        if (!loop.Bounds.Touches(outer.Bounds))
        {
            return LoopRelation.Outside;
        }

        // A few points tell; those on the edge itself don't count.
        int inside = 0;
        int outside = 0;
        int step = Math.Max(1, loop.Segments.Count / 24);
        for (int i = 0; i < loop.Segments.Count; i += step)
        {
            EdgeSegment s = loop.Segments[i];
            foreach (double part in loop.Segments.Count < 4 ? new[] { 0.1, 0.4, 0.7 } : [0.5])
            {
                Point2 p = s.At(part);
                if (outer.Distance(p, 2 * EcadTolerances.SamePoint) <= EcadTolerances.SamePoint)
                {
                    continue;
                }

                _ = outer.Contains(p) ? inside++ : outside++;
            }
        }

        return outside == 0 ? LoopRelation.Inside : inside == 0 ? LoopRelation.Outside : LoopRelation.Crossing;
    }

    // What lies inside a cutout is not there any more: islands are text or a decoy.
    private static void IslandsOut(List<OutlineLoop> cutouts, List<string> decoys)
    {
        for (int i = cutouts.Count - 1; i > 0; i--)
        {
            OutlineLoop small = cutouts[i];
            for (int k = 0; k < Math.Min(i, 200); k++)
            {
                if (cutouts[k].Area > small.Area && cutouts[k].Bounds.Touches(small.Bounds)
                    && Relation(small, cutouts[k]) == LoopRelation.Inside)
                {
                    decoys.Add($"a closed shape of {Size(small)} inside a cutout (line {small.Line})");
                    cutouts.RemoveAt(i);
                    break;
                }
            }
        }
    }

    // An edge drawn as two lines a pen's width apart: the outer one is what the housing must clear.
    private static void Doubled(OutlineLoop outer, List<OutlineLoop> cutouts, List<string> decoys)
    {
        for (int i = cutouts.Count - 1; i >= 0; i--)
        {
            OutlineLoop loop = cutouts[i];
            if (loop.Area < 0.7 * outer.Area)
            {
                continue;
            }

            double widest = 0;
            int step = Math.Max(1, loop.Segments.Count / 64);
            for (int s = 0; s < loop.Segments.Count; s += step)
            {
                widest = Math.Max(widest, outer.Distance(loop.Segments[s].At(0.5), 1));
                widest = Math.Max(widest, outer.Distance(loop.Segments[s].From, 1));
            }

            if (widest < 0.6)
            {
                decoys.Add($"a second line along the edge, up to {Numeral.Text(widest)} mm inside it (line {loop.Line})");
                cutouts.RemoveAt(i);
            }
        }
    }
}
