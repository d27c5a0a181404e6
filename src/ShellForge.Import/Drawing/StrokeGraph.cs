using ShellForge.Geometry.Numerics;
using ShellForge.Import.Files;

namespace ShellForge.Import.Drawing;

/// <summary>Strokes as edges between nodes, a node being a place where ends coincide.</summary>
internal sealed class StrokeGraph
{
    private readonly List<Stroke> strokes = [];
    private readonly List<int> ends = [];
    private readonly List<Point2> nodes = [];
    private readonly List<int> groups = [];
    private readonly List<List<int>> edgesAt = [];
    private readonly Dictionary<(long X, long Y, int Group), List<int>> grid = [];
    private readonly List<int> liveAt = [];
    private readonly List<bool> dropped = [];

    public int StrokeCount => strokes.Count;

    public int NodeCount => nodes.Count;

    public Stroke StrokeAt(int edge) => strokes[edge];

    public bool IsDropped(int edge) => dropped[edge];

    public IReadOnlyList<int> EdgesAt(int node) => edgesAt[node];

    /// <summary>The node where an edge starts (side 0) or ends (side 1).</summary>
    public int NodeOf(int edge, int side) => ends[(2 * edge) + side];

    public Point2 Place(int node) => nodes[node];

    public void Add(Stroke stroke)
    {
        int edge = strokes.Count;
        strokes.Add(stroke);
        dropped.Add(false);
        ends.Add(NodeAt(stroke.Segment.From, stroke.Group));
        ends.Add(NodeAt(stroke.Segment.To, stroke.Group));
        for (int side = 0; side < 2; side++)
        {
            edgesAt[NodeOf(edge, side)].Add(edge);
            liveAt[NodeOf(edge, side)]++;
        }
    }

    /// <summary>Merges loose ends with their nearest loose end within the joint tolerance, and what stays loose with any node.</summary>
    public void JoinLooseEnds()
    {
        var loose = new List<int>();
        for (int n = 0; n < nodes.Count; n++)
        {
            if (liveAt[n] == 1)
            {
                loose.Add(n);
            }
        }

        JoinPairs(loose, Cells(loose), bothLoose: true);
        loose.RemoveAll(n => liveAt[n] != 1);
        if (loose.Count > 0)
        {
            JoinPairs(loose, Cells([.. Enumerable.Range(0, nodes.Count)]), bothLoose: false);
        }
    }

    /// <summary>Drops strokes that lie on another one; returns how many. They stay in the lists of their nodes, marked.</summary>
    public int DropRepeated()
    {
        int count = 0;
        var seen = new Dictionary<(int, int), List<int>>();
        for (int e = 0; e < strokes.Count; e++)
        {
            if (dropped[e])
            {
                continue;
            }

            int a = NodeOf(e, 0);
            int b = NodeOf(e, 1);
            (int, int) key = a < b ? (a, b) : (b, a);
            bool first = !seen.TryGetValue(key, out List<int>? same);
            if (first && a != b)
            {
                seen[key] = [e];
                continue;
            }

            Point2 middle = strokes[e].Segment.At(0.5);
            if (a == b || same!.Exists(o => Point2.Distance(strokes[o].Segment.At(0.5), middle) <= EcadTolerances.Joint))
            {
                dropped[e] = true;
                liveAt[a]--;
                liveAt[b]--;
                count++;
            }
            else if (same.Count < EcadLimits.Depth)
            {
                same.Add(e);
            }
        }

        return count;
    }

    private void JoinPairs(List<int> loose, Dictionary<(long, long, int), List<int>> cells, bool bothLoose)
    {
        var pairs = new List<(double Gap, int A, int B)>();
        foreach (int a in loose)
        {
            (long X, long Y, int Group) cell = Cell(nodes[a], groups[a], EcadTolerances.Joint);
            for (long dx = -1; dx <= 1; dx++)
            {
                for (long dy = -1; dy <= 1; dy++)
                {
                    if (!cells.TryGetValue((cell.X + dx, cell.Y + dy, cell.Group), out List<int>? near))
                    {
                        continue;
                    }

                    // A cell of a twentieth of a millimetre with more ends than this is a scribble, not an outline.
                    foreach (int b in near.Take(EcadLimits.Depth))
                    {
                        double gap = Point2.Distance(nodes[a], nodes[b]);
                        if (b != a && (b > a || !bothLoose) && gap <= EcadTolerances.Joint && !ShareEdge(a, b))
                        {
                            pairs.Add((gap, a, b));
                        }
                    }
                }
            }
        }

        pairs.Sort();
        foreach ((double _, int a, int b) in pairs)
        {
            if (liveAt[a] == 1 && (bothLoose ? liveAt[b] == 1 : liveAt[b] > 0))
            {
                Merge(a, b);
            }
        }
    }

    private bool ShareEdge(int a, int b) => edgesAt[a].Exists(e => NodeOf(e, 0) == b || NodeOf(e, 1) == b);

    private void Merge(int from, int into)
    {
        foreach (int e in edgesAt[from])
        {
            for (int side = 0; side < 2; side++)
            {
                if (ends[(2 * e) + side] == from)
                {
                    ends[(2 * e) + side] = into;
                }
            }

            edgesAt[into].Add(e);
        }

        edgesAt[from].Clear();
        liveAt[into] += liveAt[from];
        liveAt[from] = 0;
    }

    private Dictionary<(long, long, int), List<int>> Cells(List<int> some)
    {
        var cells = new Dictionary<(long, long, int), List<int>>();
        foreach (int n in some)
        {
            (long, long, int) cell = Cell(nodes[n], groups[n], EcadTolerances.Joint);
            if (!cells.TryGetValue(cell, out List<int>? list))
            {
                cells[cell] = list = [];
            }

            list.Add(n);
        }

        return cells;
    }

    private int NodeAt(Point2 p, int group)
    {
        (long X, long Y, int Group) cell = Cell(p, group, EcadTolerances.SamePoint);
        for (long dx = -1; dx <= 1; dx++)
        {
            for (long dy = -1; dy <= 1; dy++)
            {
                if (grid.TryGetValue((cell.X + dx, cell.Y + dy, group), out List<int>? near))
                {
                    foreach (int n in near)
                    {
                        if (Point2.Distance(nodes[n], p) <= EcadTolerances.SamePoint)
                        {
                            return n;
                        }
                    }
                }
            }
        }

        int node = nodes.Count;
        nodes.Add(p);
        groups.Add(group);
        edgesAt.Add([]);
        liveAt.Add(0);
        if (!grid.TryGetValue(cell, out List<int>? here))
        {
            grid[cell] = here = [];
        }

        here.Add(node);
        return node;
    }

    private static (long X, long Y, int Group) Cell(Point2 p, int group, double size) =>
        ((long)Math.Floor(p.X / size), (long)Math.Floor(p.Y / size), group);
}
