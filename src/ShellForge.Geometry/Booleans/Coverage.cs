using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans;

/// <summary>
/// Stage 3b: which operands' faces cover each loop, and facing which way. Crossing the loop from front to back adds the sum to the
/// operand's winding number.
/// </summary>
internal sealed class Coverage
{
    private readonly List<Cover> _covers = [];
    private readonly List<int> _start = [0];
    private Candidate[] _candidates = [];

    private Coverage()
    {
    }

    // A triangle of the sheet in hand, with its box as drawn.
    private readonly record struct Candidate(int Triangle, int MinU, int MaxU, int MinV, int MaxV);

    /// <summary>One covering triangle: its operand, 1 when it faces as the sheet does and -1 when not, and its tag.</summary>
    internal readonly record struct Cover(int Operand, int Sense, int Tag);

    public ReadOnlySpan<Cover> this[int loop] =>
        System.Runtime.InteropServices.CollectionsMarshal.AsSpan(_covers)[_start[loop].._start[loop + 1]];

    public static Coverage Of(Arrangement arrangement, Loops loops, CancellationToken ct)
    {
        Coverage coverage = new();
        int sheet = -1;
        for (int loop = 0; loop < loops.Count; loop++)
        {
            if ((loop & 1023) == 0)
            {
                ct.ThrowIfCancellationRequested();
            }

            if (loops.SheetOf[loop] != sheet)
            {
                sheet = loops.SheetOf[loop];
                coverage.Gather(arrangement, sheet);
            }

            coverage.Add(arrangement, loops, loop);
            coverage._start.Add(coverage._covers.Count);
        }

        return coverage;
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

    private void Add(Arrangement arrangement, Loops loops, int loop)
    {
        int sheet = loops.SheetOf[loop];
        Probe probe = arrangement.ProbeAt(loops.FirstSide[loop], sheet);
        Drawing drawing = arrangement.Sheets.Drawings[sheet];
        Scene scene = arrangement.Found.Scene;
        PointStore points = arrangement.Points;
        double u = points.Approximate(probe.Point, drawing.U), v = points.Approximate(probe.Point, drawing.V);
        foreach (ref readonly Candidate candidate in _candidates.AsSpan(0, arrangement.Sheets.Triangles[sheet].Length))
        {
            if (u < candidate.MinU - PointStore.Slack || u > candidate.MaxU + PointStore.Slack
                || v < candidate.MinV - PointStore.Slack || v > candidate.MaxV + PointStore.Slack)
            {
                continue;
            }

            int triangle = candidate.Triangle;
            LatticePoint3 a = scene.Corner(triangle, 0), b = scene.Corner(triangle, 1), c = scene.Corner(triangle, 2);
            int side = probe.Orient(points, a, b, drawing.U, drawing.V);
            if (probe.Orient(points, b, c, drawing.U, drawing.V) == side && probe.Orient(points, c, a, drawing.U, drawing.V) == side)
            {
                _covers.Add(new Cover(scene.OperandOf[triangle], side, scene.Tag(triangle)));
            }
        }
    }

    // The loops of a sheet come one after the other.
    private void Gather(Arrangement arrangement, int sheet)
    {
        ReadOnlySpan<int> triangles = arrangement.Sheets.Triangles[sheet];
        Drawing drawing = arrangement.Sheets.Drawings[sheet];
        Scene scene = arrangement.Found.Scene;
        if (_candidates.Length < triangles.Length)
        {
            _candidates = new Candidate[2 * triangles.Length];
        }

        for (int i = 0; i < triangles.Length; i++)
        {
            int triangle = triangles[i];
            LatticePoint3 a = scene.Corner(triangle, 0), b = scene.Corner(triangle, 1), c = scene.Corner(triangle, 2);
            int au = Drawing.Pick(a, drawing.U), bu = Drawing.Pick(b, drawing.U), cu = Drawing.Pick(c, drawing.U);
            int av = Drawing.Pick(a, drawing.V), bv = Drawing.Pick(b, drawing.V), cv = Drawing.Pick(c, drawing.V);
            _candidates[i] = new Candidate(
                triangle, Math.Min(au, Math.Min(bu, cu)), Math.Max(au, Math.Max(bu, cu)), Math.Min(av, Math.Min(bv, cv)), Math.Max(av, Math.Max(bv, cv)));
        }
    }
}
