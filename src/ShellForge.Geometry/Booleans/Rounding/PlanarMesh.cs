namespace ShellForge.Geometry.Booleans.Rounding;

/// <summary>
/// A Delaunay triangulation of drawn lattice points with fixed edges, in exact integers. Points come sorted by u, then v, without
/// duplicates. Half-edge 3t + k runs from corner k of triangle t to the next. Differences are at most 2^25, so an orientation fits
/// long and the circle test 128 bits. Points are inserted here; how edges are fixed and how triangles are made better stands in the other
/// files.
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
}
