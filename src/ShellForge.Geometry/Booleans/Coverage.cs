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

    private Coverage()
    {
    }

    /// <summary>One covering triangle: its operand, 1 when it faces as the sheet does and -1 when not, and its tag.</summary>
    internal readonly record struct Cover(int Operand, int Sense, int Tag);

    public ReadOnlySpan<Cover> this[int loop] =>
        System.Runtime.InteropServices.CollectionsMarshal.AsSpan(_covers)[_start[loop].._start[loop + 1]];

    public static Coverage Of(Arrangement arrangement, Loops loops, CancellationToken ct)
    {
        Coverage coverage = new();
        for (int loop = 0; loop < loops.Count; loop++)
        {
            if ((loop & 1023) == 0)
            {
                ct.ThrowIfCancellationRequested();
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
        foreach (int triangle in arrangement.Sheets.Triangles[sheet])
        {
            LatticePoint3 a = scene.Corner(triangle, 0), b = scene.Corner(triangle, 1), c = scene.Corner(triangle, 2);
            if (Misses(a, b, c, drawing.U, u) || Misses(a, b, c, drawing.V, v))
            {
                continue;
            }

            int side = probe.Orient(points, a, b, drawing.U, drawing.V);
            if (probe.Orient(points, b, c, drawing.U, drawing.V) == side && probe.Orient(points, c, a, drawing.U, drawing.V) == side)
            {
                _covers.Add(new Cover(scene.OperandOf[triangle], side, scene.Tag(triangle)));
            }
        }
    }

    private static bool Misses(LatticePoint3 a, LatticePoint3 b, LatticePoint3 c, int axis, double at)
    {
        int pa = Drawing.Pick(a, axis), pb = Drawing.Pick(b, axis), pc = Drawing.Pick(c, axis);
        return at < Math.Min(pa, Math.Min(pb, pc)) - PointStore.Slack || at > Math.Max(pa, Math.Max(pb, pc)) + PointStore.Slack;
    }
}
