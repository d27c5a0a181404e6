using ShellForge.Geometry.Booleans.Arranging;
using ShellForge.Geometry.Booleans.Exact;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans.Rounding;

/// <summary>
/// Used edges joined where a line merely goes on: at a point with two used edges, unless the point is pinned. A chain is drawn as
/// few straight edges as leave none of its points farther off than rounding would put them anyway. Only the first edge of each
/// piece stands for it.
/// </summary>
internal sealed class StraightChains
{
    // Rounding moves a point by up to 0.87 steps; leaving a point out must not be worse.
    private const double Reach = 0.75;
    private readonly Arrangement _arrangement;
    private readonly bool[] _isUsed;
    private readonly bool[] _isCorner;
    private readonly int[] _degree;
    private readonly (int First, int Second)[] _edgesAt;
    private readonly int[] _head;
    private readonly int[] _tail;

    private StraightChains(Arrangement arrangement, bool[] isUsed, bool[] isPinned)
    {
        _arrangement = arrangement;
        _isUsed = isUsed;
        _isCorner = isPinned;
        _degree = new int[isPinned.Length];
        _edgesAt = new (int, int)[isPinned.Length];
        _head = new int[isUsed.Length];
        _tail = new int[isUsed.Length];
        Array.Fill(_head, -1);
    }

    public static StraightChains Of(Arrangement arrangement, bool[] isUsed, bool[] isPinned)
    {
        StraightChains chains = new(arrangement, isUsed, isPinned);
        chains.Join();
        return chains;
    }

    /// <summary>Whether the point is an end of a straight edge of the result.</summary>
    public bool IsCorner(int point) => _degree[point] > 0 && _isCorner[point];

    /// <summary>Adds the straight edge that this edge stands for, if it does.</summary>
    public void Emit(int edge, bool forward, List<(int From, int To)> edges)
    {
        if (_head[edge] >= 0)
        {
            edges.Add(forward ? (_head[edge], _tail[edge]) : (_tail[edge], _head[edge]));
        }
    }

    private void Join()
    {
        for (int edge = 0; edge < _isUsed.Length; edge++)
        {
            if (_isUsed[edge])
            {
                Count(_arrangement.From(edge), edge);
                Count(_arrangement.To(edge), edge);
            }
        }

        for (int point = 0; point < _degree.Length; point++)
        {
            _isCorner[point] |= _degree[point] != 2
                || (_arrangement.Points.IsLattice(point) && !IsNearlyStraight(point));
        }

        bool[] seen = new bool[_isUsed.Length];
        List<int> points = [];
        List<int> edges = [];
        for (int pass = 0; pass < 2; pass++)
        {
            // First the chains that end in corners; what is left are rings without any.
            for (int edge = 0; edge < _isUsed.Length; edge++)
            {
                if (!_isUsed[edge] || seen[edge])
                {
                    continue;
                }

                int start = _arrangement.From(edge);
                if (pass == 0 && !_isCorner[start])
                {
                    start = _arrangement.To(edge);
                    if (!_isCorner[start])
                    {
                        continue;
                    }
                }

                Collect(edge, start, points, edges, seen);
                Straighten(points, edges);
            }
        }
    }

    private void Count(int point, int edge)
    {
        int degree = _degree[point]++;
        if (degree == 0)
        {
            _edgesAt[point].First = edge;
        }
        else if (degree == 1)
        {
            _edgesAt[point].Second = edge;
        }
    }

    private int OtherEnd(int edge, int point) => _arrangement.From(edge) == point ? _arrangement.To(edge) : _arrangement.From(edge);

    private bool IsNearlyStraight(int point)
    {
        (int a, int b) = _edgesAt[point];
        return Off(point, OtherEnd(a, point), OtherEnd(b, point)) <= Reach;
    }

    private void Collect(int edge, int start, List<int> points, List<int> edges, bool[] seen)
    {
        points.Clear();
        edges.Clear();
        points.Add(start);
        int point = start;
        while (true)
        {
            seen[edge] = true;
            edges.Add(edge);
            point = OtherEnd(edge, point);
            points.Add(point);
            if (_isCorner[point] || point == start)
            {
                return;
            }

            edge = _edgesAt[point].First == edge ? _edgesAt[point].Second : _edgesAt[point].First;
        }
    }

    private void Straighten(List<int> points, List<int> edges)
    {
        Stack<(int From, int To)> open = new();
        int last = points.Count - 1;
        if (points[0] == points[last])
        {
            // A ring is first halved at its farthest point, and each half kept from collapsing.
            int half = 0;
            double farthest = -1;
            for (int i = 1; i < last; i++)
            {
                double distance = Point3.Distance(_arrangement.Points.Approximate(points[i]), _arrangement.Points.Approximate(points[0]));
                if (distance > farthest)
                {
                    farthest = distance;
                    half = i;
                }
            }

            open.Push((half, last));
            open.Push((0, half));
        }
        else
        {
            open.Push((0, last));
        }

        while (open.TryPop(out (int From, int To) piece))
        {
            int worst = -1;
            double off = Reach;
            for (int i = piece.From + 1; i < piece.To; i++)
            {
                double own = Off(points[i], points[piece.From], points[piece.To]);
                if (own > off)
                {
                    off = own;
                    worst = i;
                }
            }

            if (worst >= 0)
            {
                open.Push((worst, piece.To));
                open.Push((piece.From, worst));
                continue;
            }

            _isCorner[points[piece.From]] = true;
            _isCorner[points[piece.To]] = true;
            int edge = edges[piece.From];
            bool forward = _arrangement.From(edge) == points[piece.From];
            _head[edge] = forward ? points[piece.From] : points[piece.To];
            _tail[edge] = forward ? points[piece.To] : points[piece.From];
        }
    }

    // Distance, in steps, of a point from the segment between two others.
    private double Off(int point, int from, int to)
    {
        PointStore points = _arrangement.Points;
        Point3 a = points.Approximate(from);
        Point3 along = points.Approximate(to) - a;
        Point3 toPoint = points.Approximate(point) - a;
        double length = Point3.Dot(along, along);
        double share = length > 0 ? Math.Clamp(Point3.Dot(toPoint, along) / length, 0, 1) : 0;
        return (toPoint - (share * along)).Length;
    }
}
