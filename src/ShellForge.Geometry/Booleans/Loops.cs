using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans;

/// <summary>
/// Stage 3a: the loops of each sheet. Piece i of the arrangement's edge list in a sheet has two sides, left and right of its way
/// from the smaller point number; each side belongs to one loop. Loops that bound one region with holes stay separate: they are
/// classified each for itself, so no nesting has to be known.
/// </summary>
internal sealed class Loops
{
    private readonly Arrangement _arrangement;
    private readonly PointStore _points;
    private int[] _localOf = [];
    private int[] _stamp = [];

    private Loops(Arrangement arrangement)
    {
        _arrangement = arrangement;
        _points = arrangement.Points;
        LoopOfSide = new int[2 * arrangement.EdgesOf.ItemCount];
    }

    /// <summary>The loop left (2i) and right (2i + 1) of piece i of <see cref="Arrangement.EdgesOf"/>.</summary>
    public int[] LoopOfSide { get; }

    /// <summary>For each loop its sheet.</summary>
    public List<int> SheetOf { get; } = [];

    /// <summary>For each loop one of its sides.</summary>
    public List<int> FirstSide { get; } = [];

    public int Count => SheetOf.Count;

    public static Loops Of(Arrangement arrangement, CancellationToken ct)
    {
        Loops loops = new(arrangement)
        {
            _localOf = new int[arrangement.Points.Count],
            _stamp = new int[arrangement.Points.Count],
        };
        for (int sheet = 0; sheet < arrangement.Sheets.Count; sheet++)
        {
            ct.ThrowIfCancellationRequested();
            loops.Trace(sheet);
        }

        return loops;
    }

    private void Trace(int sheet)
    {
        ReadOnlySpan<int> edges = _arrangement.EdgesOf[sheet];
        int start = _arrangement.EdgesOf.StartOf(sheet);
        List<(int, int)> outgoing = new(2 * edges.Length);
        int vertices = 0;
        for (int i = 0; i < edges.Length; i++)
        {
            outgoing.Add((Local(_arrangement.From(edges[i]), sheet, ref vertices), 2 * i));
            outgoing.Add((Local(_arrangement.To(edges[i]), sheet, ref vertices), (2 * i) + 1));
        }

        Grouping around = Grouping.Of(vertices, outgoing);

        // From side h the walk goes on, at its end, to the outgoing side that comes clockwise after the way back.
        int[] next = new int[2 * edges.Length];
        Drawing drawing = _arrangement.Sheets.Drawings[sheet];
        for (int v = 0; v < vertices; v++)
        {
            Span<int> fan = around.Items(v);
            if (fan.Length > 2)
            {
                SortByAngle(fan, edges, drawing);
            }

            for (int i = 0; i < fan.Length; i++)
            {
                next[fan[i] ^ 1] = fan[i == 0 ? fan.Length - 1 : i - 1];
            }
        }

        Span<int> loopOf = LoopOfSide.AsSpan(2 * start, 2 * edges.Length);
        loopOf.Fill(-1);
        for (int side = 0; side < loopOf.Length; side++)
        {
            if (loopOf[side] >= 0)
            {
                continue;
            }

            for (int s = side; loopOf[s] < 0; s = next[s])
            {
                loopOf[s] = Count;
            }

            FirstSide.Add((2 * start) + side);
            SheetOf.Add(sheet);
        }
    }

    // By insertion: fans are small.
    private void SortByAngle(Span<int> fan, ReadOnlySpan<int> edges, in Drawing drawing)
    {
        for (int i = 1; i < fan.Length; i++)
        {
            int side = fan[i];
            int at = i;
            while (at > 0 && CompareAngle(edges[side >> 1], (side & 1) != 0, edges[fan[at - 1] >> 1], (fan[at - 1] & 1) != 0, drawing) < 0)
            {
                fan[at] = fan[at - 1];
                at--;
            }

            fan[at] = side;
        }
    }

    private int Local(int point, int sheet, ref int vertices)
    {
        if (_stamp[point] != sheet + 1)
        {
            _stamp[point] = sheet + 1;
            _localOf[point] = vertices++;
        }

        return _localOf[point];
    }

    // Counter-clockwise order of two edges that leave one point, from the drawing's first axis on.
    private int CompareAngle(int a, bool aReversed, int b, bool bReversed, in Drawing drawing)
    {
        if (a == b)
        {
            return 0;
        }

        (int fromA, int toA) = aReversed ? (_arrangement.To(a), _arrangement.From(a)) : (_arrangement.From(a), _arrangement.To(a));
        (int fromB, int toB) = bReversed ? (_arrangement.To(b), _arrangement.From(b)) : (_arrangement.From(b), _arrangement.To(b));
        int half = Half(fromA, toA, drawing).CompareTo(Half(fromB, toB, drawing));
        if (half != 0)
        {
            return half;
        }

        double ua = _points.Approximate(toA, drawing.U) - _points.Approximate(fromA, drawing.U);
        double va = _points.Approximate(toA, drawing.V) - _points.Approximate(fromA, drawing.V);
        double ub = _points.Approximate(toB, drawing.U) - _points.Approximate(fromB, drawing.U);
        double vb = _points.Approximate(toB, drawing.V) - _points.Approximate(fromB, drawing.V);
        double cross = (ua * vb) - (va * ub);
        double bound = (Math.Abs(ua) + Math.Abs(va) + Math.Abs(ub) + Math.Abs(vb) + 1) * (4 * PointStore.Slack);
        if (Math.Abs(cross) > bound)
        {
            return cross > 0 ? -1 : 1;
        }

        (Int128 exactUa, Int128 exactVa) = Exact(a, drawing);
        (Int128 exactUb, Int128 exactVb) = Exact(b, drawing);
        int sign = (Int256.Product(exactUa, exactVb) - Int256.Product(exactVa, exactUb)).Sign;
        return aReversed != bReversed ? sign : -sign;
    }

    private int Half(int from, int to, in Drawing drawing)
    {
        int v = _points.Compare(to, from, drawing.V);
        return v > 0 || (v == 0 && _points.Compare(to, from, drawing.U) > 0) ? 0 : 1;
    }

    private (Int128 U, Int128 V) Exact(int edge, in Drawing drawing)
    {
        (Int128 x, Int128 y, Int128 z) = _arrangement.Direction(edge);
        return (drawing.U == 0 ? x : drawing.U == 1 ? y : z, drawing.V == 0 ? x : drawing.V == 1 ? y : z);
    }
}
