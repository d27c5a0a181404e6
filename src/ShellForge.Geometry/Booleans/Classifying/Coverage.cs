using ShellForge.Geometry.Booleans.Arranging;
using ShellForge.Geometry.Booleans.Exact;
using ShellForge.Geometry.Booleans.Meeting;
using ShellForge.Geometry.Booleans.Tables;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans.Classifying;

/// <summary>
/// Stage 3b: which operands' faces cover each loop, and facing which way. Crossing the loop from front to back adds the sum to the
/// operand's winding number.
/// </summary>
internal sealed class Coverage
{
    // Loops from which on more than one core is worth waking.
    private const int WorthThreads = 512;
    private readonly Cover[] _covers;
    private readonly int[] _start;

    private Coverage(Cover[] covers, int[] start)
    {
        _covers = covers;
        _start = start;
    }

    // A triangle of the sheet in hand, with its box as drawn.
    private readonly record struct Candidate(int Triangle, int MinU, int MaxU, int MinV, int MaxV);

    /// <summary>One covering triangle: its operand, 1 when it faces as the sheet does and -1 when not, and its tag.</summary>
    internal readonly record struct Cover(int Operand, int Sense, int Tag);

    public ReadOnlySpan<Cover> this[int loop] => _covers.AsSpan(_start[loop], _start[loop + 1] - _start[loop]);

    public static Coverage Of(Arrangement arrangement, Loops loops, int threads, CancellationToken ct)
    {
        int[] start = new int[loops.Count + 1];
        int runs = ParallelRuns.Count(loops.Count, WorthThreads, threads);
        List<Cover>[] covers = new List<Cover>[runs];
        ParallelRuns.ForEach(runs, threads, run =>
        {
            (int from, int to) = ParallelRuns.Range(run, runs, loops.Count);
            Search search = new(arrangement, loops);
            covers[run] = search.Covers;
            for (int loop = from; loop < to; loop++)
            {
                if ((loop & 1023) == 0)
                {
                    ct.ThrowIfCancellationRequested();
                }

                int before = search.Covers.Count;
                search.Add(loop);
                start[loop + 1] = search.Covers.Count - before;
            }
        }, ct);
        for (int loop = 0; loop < loops.Count; loop++)
        {
            start[loop + 1] += start[loop];
        }

        Cover[] all = new Cover[start[^1]];
        int at = 0;
        foreach (List<Cover> run in covers)
        {
            run.CopyTo(all, at);
            at += run.Count;
        }

        return new Coverage(all, start);
    }

    /// <summary>Whether any operand's winding number changes across the loop.</summary>
    public bool Changes(int loop)
    {
        ReadOnlySpan<Cover> covers = this[loop];
        foreach (Cover cover in covers)
        {
            int sum = 0;
            foreach (Cover other in covers)
            {
                sum += other.Operand == cover.Operand ? other.Sense : 0;
            }

            if (sum != 0)
            {
                return true;
            }
        }

        return false;
    }

    // One run of loops. The loops of a sheet come one after the other, so the triangles in hand are those of one sheet.
    private sealed class Search
    {
        private readonly Arrangement _arrangement;
        private readonly Loops _loops;
        private readonly OperandSet _scene;
        private Candidate[] _candidates = [];
        private int _sheet = -1;

        public Search(Arrangement arrangement, Loops loops)
        {
            _arrangement = arrangement;
            _loops = loops;
            _scene = arrangement.Found.OperandSet;
        }

        public List<Cover> Covers { get; } = [];

        public void Add(int loop)
        {
            int sheet = _loops.SheetOf[loop];
            Drawing drawing = _arrangement.Sheets.Drawings[sheet];
            ReadOnlySpan<int> triangles = _arrangement.Sheets.Triangles[sheet];
            if (sheet != _sheet)
            {
                _sheet = sheet;
                Gather(triangles, drawing);
            }

            Probe probe = _arrangement.ProbeAt(_loops.FirstSide[loop], sheet);
            PointStore points = _arrangement.Points;
            double u = points.Approximate(probe.Point, drawing.U), v = points.Approximate(probe.Point, drawing.V);
            foreach (ref readonly Candidate candidate in _candidates.AsSpan(0, triangles.Length))
            {
                if (u < candidate.MinU - PointStore.Slack || u > candidate.MaxU + PointStore.Slack
                    || v < candidate.MinV - PointStore.Slack || v > candidate.MaxV + PointStore.Slack)
                {
                    continue;
                }

                int triangle = candidate.Triangle;
                LatticePoint3 a = _scene.Corner(triangle, 0), b = _scene.Corner(triangle, 1), c = _scene.Corner(triangle, 2);
                int side = probe.Orient(points, a, b, drawing.U, drawing.V);
                if (probe.Orient(points, b, c, drawing.U, drawing.V) == side && probe.Orient(points, c, a, drawing.U, drawing.V) == side)
                {
                    Covers.Add(new Cover(_scene.OperandOf[triangle], side, _scene.Tag(triangle)));
                }
            }
        }

        private void Gather(ReadOnlySpan<int> triangles, in Drawing drawing)
        {
            if (_candidates.Length < triangles.Length)
            {
                _candidates = new Candidate[2 * triangles.Length];
            }

            for (int i = 0; i < triangles.Length; i++)
            {
                int triangle = triangles[i];
                LatticePoint3 a = _scene.Corner(triangle, 0), b = _scene.Corner(triangle, 1), c = _scene.Corner(triangle, 2);
                int au = Drawing.Pick(a, drawing.U), bu = Drawing.Pick(b, drawing.U), cu = Drawing.Pick(c, drawing.U);
                int av = Drawing.Pick(a, drawing.V), bv = Drawing.Pick(b, drawing.V), cv = Drawing.Pick(c, drawing.V);
                _candidates[i] = new Candidate(
                    triangle, Math.Min(au, Math.Min(bu, cu)), Math.Max(au, Math.Max(bu, cu)), Math.Min(av, Math.Min(bv, cv)),
                    Math.Max(av, Math.Max(bv, cv)));
            }
        }
    }
}
