using ShellForge.Geometry.Numerics;
using ShellForge.Import.Files;

namespace ShellForge.Import.Drawing;

/// <summary>Strokes as edges between nodes, a node being a place where ends coincide.</summary>
internal sealed class StrokeGraph
{
    private readonly List<PenStroke> _strokes = [];
    private readonly List<int> _ends = [];
    private readonly List<Point2> _nodes = [];
    private readonly List<int> _groups = [];
    private readonly List<List<int>> _edgesAt = [];
    private readonly Dictionary<(long X, long Y, int Group), List<int>> _grid = [];
    private readonly List<int> _liveAt = [];
    private readonly List<bool> _dropped = [];

    public int StrokeCount => _strokes.Count;

    public int NodeCount => _nodes.Count;

    public PenStroke StrokeAt(int edge) => _strokes[edge];

    public bool IsDropped(int edge) => _dropped[edge];

    public IReadOnlyList<int> EdgesAt(int node) => _edgesAt[node];

    /// <summary>The node where an edge starts (side 0) or ends (side 1).</summary>
    public int NodeOf(int edge, int side) => _ends[(2 * edge) + side];

    public Point2 Place(int node) => _nodes[node];

    public void Add(PenStroke stroke)
    {
        int edge = _strokes.Count;
        _strokes.Add(stroke);
        _dropped.Add(false);
        _ends.Add(NodeAt(stroke.Segment.From, stroke.Group));
        _ends.Add(NodeAt(stroke.Segment.To, stroke.Group));
        for (int side = 0; side < 2; side++)
        {
            _edgesAt[NodeOf(edge, side)].Add(edge);
            _liveAt[NodeOf(edge, side)]++;
        }
    }

    /// <summary>Merges loose ends with their nearest loose end within the joint tolerance, and what stays loose with any node.</summary>
    public void JoinLooseEnds()
    {
        var loose = new List<int>();
        for (int n = 0; n < _nodes.Count; n++)
        {
            if (_liveAt[n] == 1)
            {
                loose.Add(n);
            }
        }

        JoinPairs(loose, Cells(loose), bothLoose: true);
        loose.RemoveAll(n => _liveAt[n] != 1);
        if (loose.Count > 0)
        {
            JoinPairs(loose, Cells([.. Enumerable.Range(0, _nodes.Count)]), bothLoose: false);
        }
    }

    /// <summary>Drops strokes that lie on another one; returns how many. They stay in the lists of their nodes, marked.</summary>
    public int DropRepeated()
    {
        int count = 0;
        var seen = new Dictionary<(int, int), List<int>>();
        for (int e = 0; e < _strokes.Count; e++)
        {
            if (_dropped[e])
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

            Point2 middle = _strokes[e].Segment.At(0.5);
            if (a == b || same!.Exists(o => Point2.Distance(_strokes[o].Segment.At(0.5), middle) <= EcadTolerances.Joint))
            {
                _dropped[e] = true;
                _liveAt[a]--;
                _liveAt[b]--;
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
            (long X, long Y, int Group) cell = Cell(_nodes[a], _groups[a], EcadTolerances.Joint);
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
                        double gap = Point2.Distance(_nodes[a], _nodes[b]);
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
            if (_liveAt[a] == 1 && (bothLoose ? _liveAt[b] == 1 : _liveAt[b] > 0))
            {
                Merge(a, b);
            }
        }
    }

    private bool ShareEdge(int a, int b) => _edgesAt[a].Exists(e => NodeOf(e, 0) == b || NodeOf(e, 1) == b);

    private void Merge(int from, int into)
    {
        foreach (int e in _edgesAt[from])
        {
            for (int side = 0; side < 2; side++)
            {
                if (_ends[(2 * e) + side] == from)
                {
                    _ends[(2 * e) + side] = into;
                }
            }

            _edgesAt[into].Add(e);
        }

        _edgesAt[from].Clear();
        _liveAt[into] += _liveAt[from];
        _liveAt[from] = 0;
    }

    private Dictionary<(long, long, int), List<int>> Cells(List<int> some)
    {
        var cells = new Dictionary<(long, long, int), List<int>>();
        foreach (int n in some)
        {
            (long, long, int) cell = Cell(_nodes[n], _groups[n], EcadTolerances.Joint);
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
                if (_grid.TryGetValue((cell.X + dx, cell.Y + dy, group), out List<int>? near))
                {
                    foreach (int n in near)
                    {
                        if (Point2.Distance(_nodes[n], p) <= EcadTolerances.SamePoint)
                        {
                            return n;
                        }
                    }
                }
            }
        }

        int node = _nodes.Count;
        _nodes.Add(p);
        _groups.Add(group);
        _edgesAt.Add([]);
        _liveAt.Add(0);
        if (!_grid.TryGetValue(cell, out List<int>? here))
        {
            _grid[cell] = here = [];
        }

        here.Add(node);
        return node;
    }

    private static (long X, long Y, int Group) Cell(Point2 p, int group, double size) =>
        ((long)Math.Floor(p.X / size), (long)Math.Floor(p.Y / size), group);
}
