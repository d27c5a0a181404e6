namespace ShellForge.Geometry.Planar;

/// <summary>
/// A Delaunay triangulation of distinct lattice points, built by a sweep over the points in the order of x, then y, with every
/// decision by exact integers. Half-edge h runs from <c>Origin[h]</c> to <c>Origin[Next(h)]</c>, counter-clockwise round
/// triangle h / 3; <c>Twin[h]</c> is the half-edge on its other side, -1 on the convex hull.
/// </summary>
internal sealed class DelaunayMesh
{
    private readonly int[] _x;
    private readonly int[] _y;
    private readonly int[] _hullNext;
    private readonly int[] _hullPrev;
    private readonly int[] _hullEdge;
    private readonly Stack<int> _doubtful = new();
    private int _count;
    private int _firstSide;

    /// <summary>Triangulates; no triangle comes out when all points lie on one line.</summary>
    public DelaunayMesh(int[] x, int[] y)
    {
        _x = x;
        _y = y;
        int most = 6 * Math.Max(x.Length, 1);
        Origin = new int[most];
        Twin = new int[most];
        Fixed = new bool[most];
        _hullNext = new int[x.Length];
        _hullPrev = new int[x.Length];
        _hullEdge = new int[x.Length];
        Leaving = new int[x.Length];
        Sweep();
    }

    /// <summary>How many half-edges there are: three a triangle.</summary>
    public int HalfEdgeCount => _count;

    /// <summary>Where each half-edge starts.</summary>
    public int[] Origin { get; }

    /// <summary>The half-edge on the other side.</summary>
    public int[] Twin { get; }

    /// <summary>Whether the edge must stay.</summary>
    public bool[] Fixed { get; }

    /// <summary>Some half-edge that leaves each vertex.</summary>
    public int[] Leaving { get; }

    /// <summary>The half-edge after h in its triangle.</summary>
    public static int Next(int h) => h % 3 == 2 ? h - 2 : h + 1;

    /// <summary>The half-edge before h in its triangle.</summary>
    public static int Prev(int h) => h % 3 == 0 ? h + 2 : h - 1;

    /// <summary>Where a half-edge ends.</summary>
    public int Target(int h) => Origin[Next(h)];

    /// <summary>
    /// Twice the area of a triangle: positive when counter-clockwise. Differences have 25 bits and a sign, so a long holds it.
    /// </summary>
    public long Orient(int a, int b, int c) =>
        (((long)_x[b] - _x[a]) * ((long)_y[c] - _y[a])) - (((long)_y[b] - _y[a]) * ((long)_x[c] - _x[a]));

    /// <summary>Whether a corner lies on the line from one corner to another, on the goal's side of the start.</summary>
    public bool IsAhead(int from, int to, int corner) =>
        Orient(from, to, corner) == 0
        && (((long)_x[corner] - _x[from]) * ((long)_x[to] - _x[from])) + (((long)_y[corner] - _y[from]) * ((long)_y[to] - _y[from])) > 0;

    /// <summary>The half-edges that leave a corner, one for each triangle round it.</summary>
    public IEnumerable<int> Fan(int corner)
    {
        int start = Leaving[corner];
        int h = start;
        do
        {
            yield return h;
            h = Twin[Prev(h)];
        }
        while (h >= 0 && h != start);

        for (h = h < 0 ? Twin[start] : -1; h >= 0; h = Twin[h])
        {
            h = Next(h);
            yield return h;
        }
    }

    /// <summary>
    /// Turns the diagonal of the two triangles at h: h then runs between the corners that were opposite. Its quadrilateral must
    /// be strictly convex.
    /// </summary>
    public void Flip(int h)
    {
        int t = Twin[h];
        int hn = Next(h);
        int hp = Prev(h);
        int tn = Next(t);
        int tp = Prev(t);
        int a = Origin[h];
        int b = Origin[t];
        int c = Origin[hp];
        int d = Origin[tp];
        (int twinHn, bool fixedHn) = (Twin[hn], Fixed[hn]);
        (int twinTn, bool fixedTn) = (Twin[tn], Fixed[tn]);

        // Before: (a b c) at h and (b a d) at t. After: (d c a) at h and (c d b) at t. hp and tp keep c-a and d-b.
        Origin[h] = d;
        Origin[hn] = c;
        Origin[hp] = a;
        Origin[t] = c;
        Origin[tn] = d;
        Origin[tp] = b;

        // h: d-c, hn: c-a, hp: a-d; t: c-d, tn: d-b, tp: b-c.
        Link(hn, Twin[hp], Fixed[hp]);
        Link(hp, twinTn, fixedTn);
        Link(tn, Twin[tp], Fixed[tp]);
        Link(tp, twinHn, fixedHn);
        Leaving[a] = hp;
        Leaving[b] = tp;
        Leaving[c] = hn;
        Leaving[d] = tn;
    }

    /// <summary>Flips edges, starting with those pushed, until none is worse than its other diagonal.</summary>
    public void Restore(IEnumerable<int> edges)
    {
        foreach (int h in edges)
        {
            _doubtful.Push(h);
        }

        while (_doubtful.TryPop(out int h))
        {
            if (Twin[h] < 0 || Fixed[h])
            {
                continue;
            }

            int t = Twin[h];
            if (InCircle(Origin[h], Target(h), Origin[Prev(h)], Origin[Prev(t)]) > 0)
            {
                Flip(h);
                _doubtful.Push(Next(h));
                _doubtful.Push(Prev(h));
                _doubtful.Push(Next(t));
                _doubtful.Push(Prev(t));
            }
        }
    }

    // Positive when d lies inside the circle through a, b, c. Three terms of 51 + 52 bits: 105 bits at most.
    private int InCircle(int a, int b, int c, int d)
    {
        long ax = _x[a] - _x[d];
        long ay = _y[a] - _y[d];
        long bx = _x[b] - _x[d];
        long by = _y[b] - _y[d];
        long cx = _x[c] - _x[d];
        long cy = _y[c] - _y[d];
        Int128 sum = ((Int128)((ax * ax) + (ay * ay)) * ((bx * cy) - (by * cx)))
            + ((Int128)((bx * bx) + (by * by)) * ((cx * ay) - (cy * ax)))
            + ((Int128)((cx * cx) + (cy * cy)) * ((ax * by) - (ay * bx)));
        return Int128.Sign(sum);
    }

    private void Link(int h, int twin, bool isFixed)
    {
        Twin[h] = twin;
        Fixed[h] = isFixed;
        if (twin >= 0)
        {
            Twin[twin] = h;
        }
        else
        {
            _hullEdge[Origin[h]] = h;
        }
    }

    private int Add(int a, int b, int c)
    {
        int h = _count;
        _count += 3;
        (Origin[h], Origin[h + 1], Origin[h + 2]) = (a, b, c);
        (Twin[h], Twin[h + 1], Twin[h + 2]) = (-1, -1, -1);
        (Leaving[a], Leaving[b], Leaving[c]) = (h, h + 1, h + 2);
        return h;
    }

    private void Join(int h, int t) => (Twin[h], Twin[t]) = (t, h);

    private void Sweep()
    {
        int[] order = [.. Enumerable.Range(0, _x.Length).OrderBy(i => _x[i]).ThenBy(i => _y[i])];
        int apex = 2;
        while (apex < order.Length && Orient(order[0], order[1], order[apex]) == 0)
        {
            apex++;
        }

        if (apex >= order.Length)
        {
            return;
        }

        StartFan(order.AsSpan(0, apex), order[apex]);
        int last = order[apex];
        for (int i = apex + 1; i < order.Length; i++)
        {
            AddPoint(order[i], last);
            last = order[i];
        }
    }

    // The first points lie on one line; the first one off it makes a fan with them.
    private void StartFan(ReadOnlySpan<int> line, int tip)
    {
        bool left = Orient(line[0], line[1], tip) > 0;
        int before = -1;
        for (int i = 0; i + 1 < line.Length; i++)
        {
            int h = left ? Add(line[i], line[i + 1], tip) : Add(line[i + 1], line[i], tip);
            int low = left ? h + 2 : h + 1;
            int high = left ? h + 1 : h + 2;
            if (before >= 0)
            {
                Join(before, low);
            }

            before = high;
        }

        var hull = new List<int>(line.ToArray());
        if (!left)
        {
            hull.Reverse();
        }

        hull.Add(tip);
        for (int i = 0; i < hull.Count; i++)
        {
            int next = hull[(i + 1) % hull.Count];
            _hullNext[hull[i]] = next;
            _hullPrev[next] = hull[i];
        }

        for (int h = 0; h < _count; h++)
        {
            if (Twin[h] < 0)
            {
                _hullEdge[Origin[h]] = h;
            }
        }

        Restore(Enumerable.Range(0, _count));
    }

    // The newest hull vertex is the last in the sweep's order, so what the new point sees of the hull begins there.
    private void AddPoint(int p, int last)
    {
        var made = new List<int>();
        int right = last;
        int joint = -1;
        while (Orient(right, _hullNext[right], p) < 0)
        {
            int next = _hullNext[right];
            int h = Add(next, right, p);
            Join(h, _hullEdge[right]);
            if (joint >= 0)
            {
                Join(joint, h + 1);
            }
            else
            {
                _firstSide = h + 1;
            }

            joint = h + 2;
            made.Add(h);
            right = next;
        }

        int outRight = joint;
        int left = last;
        joint = outRight >= 0 ? _firstSide : -1;
        int outLeft = joint;
        while (Orient(_hullPrev[left], left, p) < 0)
        {
            int prev = _hullPrev[left];
            int h = Add(left, prev, p);
            Join(h, _hullEdge[prev]);
            if (joint >= 0)
            {
                Join(joint, h + 2);
            }
            else
            {
                outRight = h + 2;
            }

            joint = h + 1;
            outLeft = joint;
            made.Add(h);
            left = prev;
        }

        _hullNext[left] = p;
        _hullPrev[p] = left;
        _hullNext[p] = right;
        _hullPrev[right] = p;
        _hullEdge[left] = outLeft;
        _hullEdge[p] = outRight;
        Restore(made);
    }
}
