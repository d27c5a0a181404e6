using ShellForge.Geometry.Booleans.Exact;
using ShellForge.Geometry.Booleans.Tables;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans.Arranging;

/// <summary>
/// Stage 3a: the loops of each sheet. Piece i of the arrangement's edge list in a sheet has two sides, left and right of its way
/// from the smaller point number; each side belongs to one loop. Loops that bound one region with holes stay separate: they are
/// classified each for itself, so no nesting has to be known.
/// </summary>
internal sealed class Loops
{
    // Sheets from which on more than one core is worth waking.
    private const int WorthThreads = 256;
    private readonly Arrangement _arrangement;
    private readonly PointStore _points;
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

    public static Loops Of(Arrangement arrangement, int threads, CancellationToken ct)
    {
        Loops loops = new(arrangement);
        int[] next = new int[loops.LoopOfSide.Length];
        int sheets = arrangement.Sheets.Count;
        int runs = ParallelRuns.Count(sheets, WorthThreads, threads);
        ParallelRuns.ForEach(runs, threads, () => new Numbering(arrangement.Points.Count), (run, numbering) =>
        {
            (int from, int to) = ParallelRuns.Range(run, runs, sheets);
            for (int sheet = from; sheet < to; sheet++)
            {
                if ((sheet & 255) == 0)
                {
                    ct.ThrowIfCancellationRequested();
                }

                loops.Link(sheet, numbering, next);
            }
        }, ct);
        loops.Trace(next);
        return loops;
    }

    // From side h the walk goes on, at its end, to the outgoing side that comes clockwise after the way back.
    private void Link(int sheet, Numbering numbering, int[] next)
    {
        ReadOnlySpan<int> edges = _arrangement.EdgesOf[sheet];
        int start = 2 * _arrangement.EdgesOf.StartOf(sheet);
        numbering.Gather(_arrangement, edges);
        Drawing drawing = _arrangement.Sheets.Drawings[sheet];
        for (int v = 0; v < numbering.Count; v++)
        {
            Span<int> fan = numbering.SidesAt(v);
            if (fan.Length > 2)
            {
                SortByAngle(fan, edges, drawing);
            }

            for (int i = 0; i < fan.Length; i++)
            {
                next[start + (fan[i] ^ 1)] = start + fan[i == 0 ? fan.Length - 1 : i - 1];
            }
        }
    }

    private void Trace(int[] next)
    {
        Array.Fill(LoopOfSide, -1);
        for (int sheet = 0; sheet < _arrangement.Sheets.Count; sheet++)
        {
            int start = 2 * _arrangement.EdgesOf.StartOf(sheet), end = start + (2 * _arrangement.EdgesOf[sheet].Length);
            for (int side = start; side < end; side++)
            {
                if (LoopOfSide[side] >= 0)
                {
                    continue;
                }

                for (int s = side; LoopOfSide[s] < 0; s = next[s])
                {
                    LoopOfSide[s] = Count;
                }

                FirstSide.Add(side);
                SheetOf.Add(sheet);
            }
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

    // The sides that leave each point of one sheet; points are numbered by first appearance. Arrays are used again for every sheet.
    private sealed class Numbering
    {
        private readonly int[] _local;
        private readonly int[] _stamp;
        private int _round;
        private int[] _start = new int[129];
        private int[] _fill = new int[128];
        private int[] _sides = new int[128];

        public Numbering(int points)
        {
            _local = new int[points];
            _stamp = new int[points];
        }

        public int Count { get; private set; }

        public Span<int> SidesAt(int vertex) => _sides.AsSpan(_start[vertex], _start[vertex + 1] - _start[vertex]);

        public void Gather(Arrangement arrangement, ReadOnlySpan<int> edges)
        {
            _round++;
            Count = 0;
            if (_sides.Length < 2 * edges.Length)
            {
                _sides = new int[4 * edges.Length];
                _start = new int[_sides.Length + 1];
                _fill = new int[_sides.Length];
            }

            foreach (int edge in edges)
            {
                Note(arrangement.From(edge));
                Note(arrangement.To(edge));
            }

            int sum = 0;
            for (int v = 0; v < Count; v++)
            {
                _start[v] = sum;
                (_fill[v], sum) = (sum, sum + _fill[v]);
            }

            _start[Count] = sum;
            for (int i = 0; i < edges.Length; i++)
            {
                _sides[_fill[_local[arrangement.From(edges[i])]]++] = 2 * i;
                _sides[_fill[_local[arrangement.To(edges[i])]]++] = (2 * i) + 1;
            }
        }

        private void Note(int point)
        {
            if (_stamp[point] != _round)
            {
                _stamp[point] = _round;
                _local[point] = Count;
                _fill[Count++] = 0;
            }

            _fill[_local[point]]++;
        }
    }
}
