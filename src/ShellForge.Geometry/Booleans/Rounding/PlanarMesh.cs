namespace ShellForge.Geometry.Booleans.Rounding;

/// <summary>
/// A Delaunay triangulation of drawn lattice points with fixed edges, in exact integers. Points come sorted by u, then v, without
/// duplicates. Half-edge 3t + k runs from corner k of triangle t to the next. Differences are at most 2^25, so an orientation fits
/// long and the circle test 128 bits. Inserting and fixing are here and share every
/// array, so the file reads better whole; how the triangles are made better stands in the other file.
/// </summary>
internal sealed partial class PlanarMesh
{
    private int[] _corner = new int[96];
    private int[] _twin = new int[96];
    private int[] _net = new int[96];
    private bool[] _fixed = new bool[96];
    private int[] _leaving = [];
    private int[] _hullNext = [];
    private int[] _hullPrevious = [];
    private int[] _hullEdge = [];
    private long[] _u = [];
    private long[] _v = [];
    private readonly Stack<int> _suspects = new();
    private readonly Queue<(int, int)> _crossing = new();

    /// <summary>What keeps an edge from being fixed.</summary>
    internal enum Obstacle
    {
        None,
        Vertex,
        Edge,
    }

    public int TriangleCount { get; private set; }

    public int Corner(int halfEdge) => _corner[halfEdge];

    /// <summary>Triangulates the points. False when all lie on one line.</summary>
    public bool Build(ReadOnlySpan<long> u, ReadOnlySpan<long> v)
    {
        int count = u.Length;
        TriangleCount = 0;
        if (_u.Length < count)
        {
            int size = Math.Max(64, 2 * count);
            _u = new long[size];
            _v = new long[size];
            _leaving = new int[size];
            _hullNext = new int[size];
            _hullPrevious = new int[size];
            _hullEdge = new int[size];
        }

        u.CopyTo(_u);
        v.CopyTo(_v);
        int apex = 2;
        while (apex < count && Orient(0, 1, apex) == 0)
        {
            apex++;
        }

        if (apex >= count)
        {
            return false;
        }

        StartFan(apex);
        for (int p = apex + 1; p < count; p++)
        {
            AddOutside(p, p - 1);
        }

        return true;
    }

    /// <summary>
    /// Fixes the edge from a to b and adds to the net count of boundary edges that run along it. When a vertex lies on it or a
    /// fixed edge crosses it, nothing changes and what stands in the way is returned.
    /// </summary>
    public Obstacle Fix(int a, int b, int net, out int obstacleFrom, out int obstacleTo)
    {
        obstacleFrom = obstacleTo = -1;
        int h = FindEdge(a, b);
        if (h < 0)
        {
            Obstacle obstacle = CollectCrossing(a, b, out obstacleFrom, out obstacleTo);
            if (obstacle != Obstacle.None)
            {
                return obstacle;
            }

            FlipThrough(a, b);
            h = FindEdge(a, b);
        }

        _fixed[h] = true;
        int own = Math.Sign(_corner[h] == a ? 1 : -1) * net;
        _net[h] += own;
        int twin = _twin[h];
        if (twin >= 0)
        {
            _fixed[twin] = true;
            _net[twin] -= own;
        }

        return Obstacle.None;
    }

    /// <summary>How often each triangle is inside the boundary: the sum of the nets crossed from outside.</summary>
    public int[] Multiplicity()
    {
        int[] multiplicity = new int[TriangleCount];
        bool[] seen = new bool[TriangleCount];
        Stack<int> open = new();
        int hull = 0;
        while (_twin[hull] >= 0)
        {
            hull++;
        }

        multiplicity[hull / 3] = _net[hull];
        seen[hull / 3] = true;
        open.Push(hull / 3);
        while (open.TryPop(out int t))
        {
            for (int h = 3 * t; h < (3 * t) + 3; h++)
            {
                int neighbour = _twin[h] / 3;
                if (_twin[h] >= 0 && !seen[neighbour])
                {
                    seen[neighbour] = true;
                    multiplicity[neighbour] = multiplicity[t] - _net[h];
                    open.Push(neighbour);
                }
            }
        }

        return multiplicity;
    }

    public long Orient(int a, int b, int c) => ((_u[b] - _u[a]) * (_v[c] - _v[a])) - ((_v[b] - _v[a]) * (_u[c] - _u[a]));

    private static int Next(int h) => h % 3 == 2 ? h - 2 : h + 1;

    private static int Previous(int h) => h % 3 == 0 ? h + 2 : h - 1;

    private void StartFan(int apex)
    {
        bool left = Orient(0, 1, apex) > 0;
        int previous = -1;
        for (int i = 0; i + 1 < apex; i++)
        {
            int t = left ? AddTriangle(i, i + 1, apex) : AddTriangle(i + 1, i, apex);
            if (previous >= 0)
            {
                // The side shared with the fan's triangle before: from i to the apex there, back here.
                Link(left ? (3 * previous) + 1 : (3 * previous) + 2, left ? (3 * t) + 2 : (3 * t) + 1);
            }

            SetHull(left ? i : i + 1, left ? i + 1 : i, 3 * t);
            if (i == 0)
            {
                SetHull(left ? apex : 0, left ? 0 : apex, left ? (3 * t) + 2 : (3 * t) + 1);
            }

            if (i + 2 == apex)
            {
                SetHull(left ? i + 1 : apex, left ? apex : i + 1, left ? (3 * t) + 1 : (3 * t) + 2);
            }

            previous = t;
        }
    }

    private void AddOutside(int p, int last)
    {
        // The last point is the greatest so far, hence on the hull, and p lies beyond it.
        int low = last;
        while (Orient(_hullPrevious[low], low, p) < 0)
        {
            low = _hullPrevious[low];
        }

        int high = last;
        while (Orient(high, _hullNext[high], p) < 0)
        {
            high = _hullNext[high];
        }

        int previousEdge = -1;
        int firstEdge = -1;
        for (int a = low; a != high; a = _hullNext[a])
        {
            int b = _hullNext[a];
            int t = AddTriangle(a, p, b);
            Link((3 * t) + 2, _hullEdge[a]);
            if (previousEdge >= 0)
            {
                Link(3 * t, previousEdge);
            }
            else
            {
                firstEdge = 3 * t;
            }

            previousEdge = (3 * t) + 1;
            _suspects.Push((3 * t) + 2);
        }

        SetHull(low, p, firstEdge);
        SetHull(p, high, previousEdge);
        Legalize();
    }

    private void SetHull(int from, int to, int edge)
    {
        _hullNext[from] = to;
        _hullPrevious[to] = from;
        _hullEdge[from] = edge;
    }

    private int AddTriangle(int a, int b, int c)
    {
        int t = TriangleCount++;
        if (3 * TriangleCount > _corner.Length)
        {
            int size = 2 * _corner.Length;
            Array.Resize(ref _corner, size);
            Array.Resize(ref _twin, size);
            Array.Resize(ref _net, size);
            Array.Resize(ref _fixed, size);
        }

        Set(3 * t, a, -1, 0, false);
        Set((3 * t) + 1, b, -1, 0, false);
        Set((3 * t) + 2, c, -1, 0, false);
        return t;
    }

    private void Set(int h, int from, int twin, int net, bool isFixed)
    {
        _corner[h] = from;
        _leaving[from] = h;
        _net[h] = net;
        _fixed[h] = isFixed;
        _twin[h] = twin;
        if (twin >= 0)
        {
            _twin[twin] = h;
        }
    }

    private void Link(int h, int g)
    {
        _twin[h] = g;
        _twin[g] = h;
    }

    // (a, b, c) and (b, a, d) become (a, d, c) and (d, b, c).
    private void Flip(int h)
    {
        int g = _twin[h];
        int a = _corner[h], b = _corner[g], c = _corner[Previous(h)], d = _corner[Previous(g)];
        (int twin, int net, bool isFixed) bc = Slot(Next(h)), ca = Slot(Previous(h)), ad = Slot(Next(g)), db = Slot(Previous(g));
        int t = 3 * (h / 3), s = 3 * (g / 3);
        Set(t, a, ad.twin, ad.net, ad.isFixed);
        Set(t + 1, d, -1, 0, false);
        Set(t + 2, c, ca.twin, ca.net, ca.isFixed);
        Set(s, d, db.twin, db.net, db.isFixed);
        Set(s + 1, b, bc.twin, bc.net, bc.isFixed);
        Set(s + 2, c, -1, 0, false);
        Link(t + 1, s + 2);
        RestoreHull(t);
        RestoreHull(t + 2);
        RestoreHull(s);
        RestoreHull(s + 1);
    }

    private void RestoreHull(int h)
    {
        if (_twin[h] < 0)
        {
            _hullEdge[_corner[h]] = h;
        }
    }

    private (int Twin, int Net, bool Fixed) Slot(int h) => (_twin[h], _net[h], _fixed[h]);

    // The half-edge from a to b, or from b to a when a to b is outside the hull; -1 when they are not joined.
    private int FindEdge(int a, int b)
    {
        int start = _leaving[a];
        int h = start;
        do
        {
            if (_corner[Next(h)] == b)
            {
                return h;
            }

            int back = Previous(h);
            if (_corner[back] == b)
            {
                return back;
            }

            h = _twin[back];
        }
        while (h >= 0 && h != start);

        // The fan is open: go the other way round.
        h = start;
        while (h >= 0)
        {
            if (_corner[Next(h)] == b)
            {
                return h;
            }

            h = _twin[h] < 0 ? -1 : Next(_twin[h]);
            if (h == start)
            {
                break;
            }
        }

        return -1;
    }

    private Obstacle CollectCrossing(int a, int b, out int from, out int to)
    {
        _crossing.Clear();
        from = to = -1;
        int h = FirstCrossed(a, b, out int vertex);
        if (h < 0)
        {
            from = vertex;
            return Obstacle.Vertex;
        }

        while (true)
        {
            if (_fixed[h])
            {
                from = _corner[h];
                to = _corner[Next(h)];
                return Obstacle.Edge;
            }

            _crossing.Enqueue((_corner[h], _corner[Next(h)]));
            int g = _twin[h];
            int apex = _corner[Previous(g)];
            if (apex == b)
            {
                return Obstacle.None;
            }

            long side = Orient(a, b, apex);
            if (side == 0)
            {
                from = apex;
                return Obstacle.Vertex;
            }

            // h runs from the right of a-b to its left; g the other way: next of g starts at h's right end.
            h = side > 0 ? Next(g) : Previous(g);
        }
    }

    // The edge opposite a that a-b crosses first, running from the right of a-b to its left.
    private int FirstCrossed(int a, int b, out int vertex)
    {
        vertex = -1;
        int start = _leaving[a];
        int h = start;
        bool forward = true;
        while (true)
        {
            int x = _corner[Next(h)], y = _corner[Previous(h)];
            long sx = Orient(a, b, x), sy = Orient(a, b, y);
            if (sx == 0 && IsAhead(a, b, x))
            {
                vertex = x;
                return -1;
            }

            if (sy == 0 && IsAhead(a, b, y))
            {
                vertex = y;
                return -1;
            }

            if (sx < 0 && sy > 0)
            {
                return Next(h);
            }

            int next = forward ? _twin[Previous(h)] : _twin[h] < 0 ? -1 : Next(_twin[h]);
            if (next < 0 && forward)
            {
                forward = false;
                next = _twin[start] < 0 ? -1 : Next(_twin[start]);
            }

            if (next < 0 || next == start)
            {
                throw new InvalidOperationException("A point of a triangulation does not see its hull.");
            }

            h = next;
        }
    }

    private bool IsAhead(int a, int b, int x) =>
        ((_u[b] - _u[a]) * (_u[x] - _u[a])) + ((_v[b] - _v[a]) * (_v[x] - _v[a])) > 0;

    private void FlipThrough(int a, int b)
    {
        while (_crossing.TryDequeue(out (int X, int Y) edge))
        {
            int h = FindEdge(edge.X, edge.Y);
            int g = _twin[h];
            int x = _corner[h], y = _corner[g], c = _corner[Previous(h)], d = _corner[Previous(g)];
            if (Orient(d, y, c) <= 0 || Orient(c, x, d) <= 0)
            {
                _crossing.Enqueue(edge);
                continue;
            }

            Flip(h);
            if (c != a && c != b && d != a && d != b && Math.Sign(Orient(a, b, c)) * Math.Sign(Orient(a, b, d)) < 0)
            {
                _crossing.Enqueue((c, d));
            }
        }
    }
}
