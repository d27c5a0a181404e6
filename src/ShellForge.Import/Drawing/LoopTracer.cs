using ShellForge.Geometry.Numerics;

namespace ShellForge.Import.Drawing;

/// <summary>
/// Follows a stroke graph into closed loops: prunes what hangs loose, walks plain loops, and takes the outer border of the rest.
/// </summary>
internal static class LoopTracer
{
    internal sealed record Traced(
        List<OutlineLoop> Loops, int OpenChains, int OpenLine, double OpenLength, double OpenGap, Box2 OpenBounds, int Branches,
        int BranchLine);

    public static Traced Trace(StrokeGraph graph)
    {
        bool[] gone = new bool[graph.StrokeCount];
        for (int e = 0; e < gone.Length; e++)
        {
            gone[e] = graph.IsDropped(e);
        }

        int[] degree = Degrees(graph, gone);
        List<int> pruned = Prune(graph, gone, degree);
        (int chains, int line, double length, double gap, Box2 bounds) = OpenPieces(graph, pruned);
        var loops = new List<OutlineLoop>();
        int branches = 0;
        int branchLine = 0;
        bool[] visited = new bool[graph.NodeCount];
        for (int e = 0; e < gone.Length; e++)
        {
            if (gone[e] || visited[graph.NodeOf(e, 0)])
            {
                continue;
            }

            List<int> piece = Piece(graph, e, gone, visited);
            if (piece.TrueForAll(i => degree[graph.NodeOf(i, 0)] == 2 && degree[graph.NodeOf(i, 1)] == 2))
            {
                loops.Add(PlainLoop(graph, piece, gone));
                continue;
            }

            (List<List<(int Edge, bool Forward)>> borders, int left) = OuterBorder.Of(graph, piece, gone);
            loops.AddRange(borders.Select(b => LoopOf(graph, b)));
            branches += left;
            branchLine = branchLine == 0 && left > 0 ? graph.StrokeAt(piece[0]).Line : branchLine;
        }

        return new Traced(loops, chains, line, length, gap, bounds, branches, branchLine);
    }

    private static int[] Degrees(StrokeGraph graph, bool[] gone)
    {
        int[] degree = new int[graph.NodeCount];
        for (int e = 0; e < gone.Length; e++)
        {
            if (!gone[e])
            {
                degree[graph.NodeOf(e, 0)]++;
                degree[graph.NodeOf(e, 1)]++;
            }
        }

        return degree;
    }

    private static List<int> Prune(StrokeGraph graph, bool[] gone, int[] degree)
    {
        var queue = new Queue<int>();
        for (int n = 0; n < degree.Length; n++)
        {
            if (degree[n] == 1)
            {
                queue.Enqueue(n);
            }
        }

        var pruned = new List<int>();
        while (queue.TryDequeue(out int n))
        {
            foreach (int e in graph.EdgesAt(n))
            {
                if (gone[e])
                {
                    continue;
                }

                gone[e] = true;
                pruned.Add(e);
                int other = graph.NodeOf(e, 0) == n ? graph.NodeOf(e, 1) : graph.NodeOf(e, 0);
                degree[n]--;
                if (--degree[other] == 1)
                {
                    queue.Enqueue(other);
                }
            }
        }

        return pruned;
    }

    private static (int Chains, int Line, double Length, double Gap, Box2 Bounds) OpenPieces(StrokeGraph graph, List<int> pruned)
    {
        bool[] keep = new bool[graph.StrokeCount];
        Array.Fill(keep, true);
        foreach (int e in pruned)
        {
            keep[e] = false;
        }

        bool[] visited = new bool[graph.NodeCount];
        int chains = 0;
        int line = 0;
        double longest = 0;
        double gap = 0;
        Box2 bounds = Box2.Empty;
        foreach (int e in pruned.Order())
        {
            if (visited[graph.NodeOf(e, 0)])
            {
                continue;
            }

            List<int> piece = Piece(graph, e, keep, visited);
            chains++;
            double length = piece.Sum(i => graph.StrokeAt(i).Segment.Length);
            if (length > longest)
            {
                longest = length;
                line = piece.Min(i => graph.StrokeAt(i).Line);
                var loose = piece.SelectMany(i => new[] { graph.NodeOf(i, 0), graph.NodeOf(i, 1) })
                    .GroupBy(n => n).Where(g => g.Count() == 1).Select(g => graph.Place(g.Key)).ToList();
                bounds = Box2.Of(piece.SelectMany(i => new[] { graph.StrokeAt(i).Segment.From, graph.StrokeAt(i).Segment.To }));
                gap = loose.Count == 2 ? Point2.Distance(loose[0], loose[1]) : 0;
            }
        }

        return (chains, line, longest, gap, bounds);
    }

    // All edges connected with one, walked over the nodes and without recursion: each node's list is read once.
    private static List<int> Piece(StrokeGraph graph, int start, bool[] gone, bool[] visited)
    {
        var piece = new List<int>();
        var stack = new Stack<int>();
        int first = graph.NodeOf(start, 0);
        visited[first] = true;
        stack.Push(first);
        while (stack.TryPop(out int node))
        {
            foreach (int e in graph.EdgesAt(node))
            {
                if (gone[e])
                {
                    continue;
                }

                int from = graph.NodeOf(e, 0);
                int to = graph.NodeOf(e, 1);
                if (from == node)
                {
                    piece.Add(e);
                }

                int other = from == node ? to : from;
                if (!visited[other])
                {
                    visited[other] = true;
                    stack.Push(other);
                }
            }
        }

        piece.Sort();
        return piece;
    }

    private static OutlineLoop PlainLoop(StrokeGraph graph, List<int> piece, bool[] gone)
    {
        var walk = new List<(int Edge, bool Forward)>(piece.Count);
        int edge = piece[0];
        bool forward = true;
        do
        {
            walk.Add((edge, forward));
            int node = graph.NodeOf(edge, forward ? 1 : 0);
            int next = edge;
            foreach (int e in graph.EdgesAt(node))
            {
                if (!gone[e] && e != edge)
                {
                    next = e;
                    break;
                }
            }

            forward = graph.NodeOf(next, 0) == node && !(graph.NodeOf(next, 1) == node && next == edge);
            edge = next;
        }
        while (edge != piece[0] && walk.Count < piece.Count);
        return LoopOf(graph, walk);
    }

    private static OutlineLoop LoopOf(StrokeGraph graph, List<(int Edge, bool Forward)> walk)
    {
        var segments = new List<EdgeSegment>(walk.Count);
        int line = int.MaxValue;
        foreach ((int edge, bool isForward) in walk)
        {
            PenStroke stroke = graph.StrokeAt(edge);
            segments.Add(isForward ? stroke.Segment : stroke.Segment.Reversed);
            line = Math.Min(line, stroke.Line);
        }

        double largest = 0;
        var joined = new List<EdgeSegment>(segments.Count);
        for (int i = 0; i < segments.Count; i++)
        {
            EdgeSegment here = segments[i];
            int n = (i + 1) % segments.Count;
            double gap = Point2.Distance(here.To, segments[n].From);
            largest = Math.Max(largest, gap);
            if (gap == 0)
            {
                joined.Add(here);
            }
            else if (!here.IsArc)
            {
                joined.Add(here with { To = segments[n].From });
            }
            else
            {
                // An arc keeps its own ends; the bridge is a line of its own.
                joined.Add(here);
                joined.Add(EdgeSegment.Line(here.To, segments[n].From));
            }
        }

        return new OutlineLoop(joined, line, largest);
    }
}
