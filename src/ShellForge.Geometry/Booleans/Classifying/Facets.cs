using ShellForge.Geometry.Booleans.Arranging;
using ShellForge.Geometry.Booleans.Exact;
using ShellForge.Geometry.Booleans.Ingest;
using ShellForge.Geometry.Booleans.Meeting;
using ShellForge.Geometry.Booleans.Tables;

namespace ShellForge.Geometry.Booleans.Classifying;

/// <summary>What cuts space into the cells that are classified.</summary>
/// <param name="Arrangement">The edges.</param>
/// <param name="Loops">What they bound.</param>
/// <param name="Coverage">Which operands cover each loop.</param>
/// <param name="Patches">What nothing meets.</param>
internal readonly record struct CellComplex(Arrangement Arrangement, Loops Loops, Coverage Coverage, Patches Patches);

/// <summary>
/// Stage 3c: facets are the loops across which a winding number changes, and the patches. Around every edge they are sorted by
/// angle; neighbours face a common cell. Winding numbers flow from facet to facet through these cells, from one exact ray for each
/// connected set, and the expression decides on both sides of each facet.
/// </summary>
internal sealed class Facets
{
    private readonly Arrangement _arrangement;
    private readonly Loops _loops;
    private readonly Coverage _coverage;
    private readonly Patches _patches;
    // Edges from which on more than one core is worth waking.
    private const int WorthThreads = 2048;
    private readonly int[] _facetOfLoop;
    private readonly int[] _loopOfFacet;

    // The fans round all edges, one after the other: twice the facet, plus one where it lies left of the edge; and who comes next and
    // before.
    private int[] _leaves = [];
    private int[] _next = [];
    private int[] _previous = [];

    private Facets(in CellComplex complex)
    {
        (Arrangement arrangement, Loops loops, Coverage coverage, Patches patches) = complex;
        _arrangement = arrangement;
        _loops = loops;
        _coverage = coverage;
        _patches = patches;
        _facetOfLoop = new int[loops.Count];
        List<int> loopOfFacet = [];
        for (int loop = 0; loop < loops.Count; loop++)
        {
            bool changes = coverage.Changes(loop);
            _facetOfLoop[loop] = changes ? loopOfFacet.Count : -1;
            if (changes)
            {
                loopOfFacet.Add(loop);
            }
        }

        _loopOfFacet = [.. loopOfFacet];
        Kept = new sbyte[_loopOfFacet.Length + patches.Count];
    }

    // From one facet to another through the cell that the front or back of each bounds.
    private readonly record struct Link(bool FromBack, int Facet, bool ToBack);

    private readonly record struct Leaf(int Facet, Plane Plane, bool IsLeft);

    /// <summary>For each facet 1 when it bounds the result facing as it does, -1 when facing the other way, 0 when it does not.</summary>
    public sbyte[] Kept { get; }

    /// <summary>Whether the loop bounds the result, and which way.</summary>
    public int KeptLoop(int loop) => _facetOfLoop[loop] < 0 ? 0 : Kept[_facetOfLoop[loop]];

    public int KeptPatch(int patch) => Kept[_loopOfFacet.Length + patch];

    public static Facets Of(in CellComplex complex, Expression expression, int threads, CancellationToken ct)
    {
        Facets facets = new(complex);
        facets.GatherFans(threads, ct);
        facets.Flood(expression, ct);
        return facets;
    }

    private void GatherFans(int threads, CancellationToken ct)
    {
        int edges = _arrangement.EdgeCount;
        int runs = ParallelRuns.Count(edges, WorthThreads, threads);
        List<int>[] leaves = new List<int>[runs], fanSizes = new List<int>[runs];
        ParallelRuns.ForEach(runs, threads, run =>
        {
            (int from, int to) = ParallelRuns.Range(run, runs, edges);
            List<int> own = leaves[run] = new(3 * (to - from)), sizes = fanSizes[run] = new(to - from);
            List<Leaf> fan = [];
            for (int edge = from; edge < to; edge++)
            {
                Gather(edge, fan);
                if (fan.Count > 2)
                {
                    Sort(edge, fan);
                }

                if (fan.Count > 1)
                {
                    sizes.Add(fan.Count);
                    foreach (Leaf leaf in fan)
                    {
                        own.Add((2 * leaf.Facet) + (leaf.IsLeft ? 1 : 0));
                    }
                }
            }
        }, ct);
        _leaves = new int[leaves.Sum(static run => run.Count)];
        _next = new int[_leaves.Length];
        _previous = new int[_leaves.Length];
        int at = 0;
        for (int run = 0; run < runs; run++)
        {
            leaves[run].CopyTo(_leaves, at);
            foreach (int size in fanSizes[run])
            {
                for (int i = 0; i < size; i++)
                {
                    _next[at + i] = at + (i + 1 == size ? 0 : i + 1);
                    _previous[at + i] = at + (i == 0 ? size : i) - 1;
                }

                at += size;
            }
        }
    }

    private void Gather(int edge, List<Leaf> fan)
    {
        fan.Clear();
        foreach (int piece in _arrangement.PiecesOf[edge])
        {
            for (int side = 2 * piece; side <= (2 * piece) + 1; side++)
            {
                int loop = _loops.LoopOfSide[side];
                if (_facetOfLoop[loop] >= 0)
                {
                    fan.Add(new Leaf(_facetOfLoop[loop], _arrangement.Sheets.Planes[_loops.SheetOf[loop]], (side & 1) == 0));
                }
            }
        }

        AddPatch(edge, fan);
    }

    private void AddPatch(int edge, List<Leaf> fan)
    {
        int sceneEdge = _arrangement.SceneEdge(edge);
        if (sceneEdge < 0)
        {
            return;
        }

        OperandSet scene = _arrangement.Found.OperandSet;
        int partner = scene.Partner(sceneEdge);
        foreach (int halfEdge in (ReadOnlySpan<int>)[sceneEdge, partner])
        {
            if (halfEdge >= 0 && _patches.Of(halfEdge / 3) is int patch and >= 0)
            {
                int from = _arrangement.Found.VertexPoint(halfEdge / 3, halfEdge % 3);
                fan.Add(new Leaf(_loopOfFacet.Length + patch, scene.PlaneOf(halfEdge / 3), from == _arrangement.From(edge)));
            }
        }
    }

    // By insertion: fans are small.
    private void Sort(int edge, List<Leaf> fan)
    {
        Leaf first = fan[0];
        for (int i = 1; i < fan.Count; i++)
        {
            Leaf leaf = fan[i];
            int half = Half(edge, first, leaf);
            int at = i;
            while (at > 1 && IsBefore(edge, leaf, half, fan[at - 1], Half(edge, first, fan[at - 1])))
            {
                fan[at] = fan[at - 1];
                at--;
            }

            fan[at] = leaf;
        }
    }

    private bool IsBefore(int edge, in Leaf a, int halfOfA, in Leaf b, int halfOfB) =>
        halfOfA != halfOfB ? halfOfA < halfOfB : Turn(edge, a, b) > 0;

    // 0 for angles in [0, 180) degrees from the first leaf, 1 for the rest.
    private int Half(int edge, in Leaf first, in Leaf leaf)
    {
        int turn = Turn(edge, first, leaf);
        if (turn != 0)
        {
            return turn > 0 ? 0 : 1;
        }

        int dot = Plane.NormalDotSign(first.Plane, leaf.Plane);
        return (first.IsLeft == leaf.IsLeft ? dot : -dot) > 0 ? 0 : 1;
    }

    // Sign of the angle from one leaf to the other about the edge's direction. Both normals are perpendicular to the edge, so their
    // product lies along it and one clear component tells its sense.
    private int Turn(int edge, in Leaf a, in Leaf b)
    {
        (int axis, int sense) = Plane.CrossSense(a.Plane, b.Plane);
        if (sense == 0)
        {
            return 0;
        }

        sense *= _arrangement.Points.Compare(_arrangement.To(edge), _arrangement.From(edge), axis);
        return a.IsLeft == b.IsLeft ? sense : -sense;
    }

    // Turning about the edge, a left facet is left behind by its front, a right one by its back.
    private Link LinkTo(int link)
    {
        int leaf = link >> 1;
        bool isLeft = (_leaves[leaf] & 1) != 0;
        int other = _leaves[(link & 1) == 0 ? _next[leaf] : _previous[leaf]];
        bool otherIsLeft = (other & 1) != 0;
        return (link & 1) == 0 ? new Link(!isLeft, other >> 1, otherIsLeft) : new Link(isLeft, other >> 1, !otherIsLeft);
    }

    private void Flood(Expression expression, CancellationToken ct)
    {
        OperandSet scene = _arrangement.Found.OperandSet;
        Grouping leavesOf = Grouping.Of(Kept.Length, _leaves, 1);
        int[] winding = new int[scene.Operands.Length];
        bool[] seen = new bool[Kept.Length];
        WindingRay ray = new(scene, _arrangement.Points);
        Stack<(int Facet, int Next, int Entry)> path = new();
        for (int start = 0; start < Kept.Length; start++)
        {
            if (seen[start])
            {
                continue;
            }

            ct.ThrowIfCancellationRequested();
            ray.Count(ProbeOf(start), winding);
            Visit(start, winding, expression, seen);
            path.Push((start, 0, -1));
            while (path.TryPop(out (int Facet, int Next, int Entry) at))
            {
                ReadOnlySpan<int> leaves = leavesOf[at.Facet];
                int i = at.Next;
                Link link = default;
                int number = -1;
                for (; i < 2 * leaves.Length; i++)
                {
                    number = (2 * leaves[i >> 1]) + (i & 1);
                    link = LinkTo(number);
                    if (!seen[link.Facet])
                    {
                        break;
                    }
                }

                if (i < 2 * leaves.Length)
                {
                    path.Push((at.Facet, i + 1, at.Entry));
                    Pass(at.Facet, link, winding, 1);
                    Visit(link.Facet, winding, expression, seen);
                    path.Push((link.Facet, 0, number));
                }
                else if (at.Entry >= 0)
                {
                    Pass(path.Peek().Facet, LinkTo(at.Entry), winding, -1);
                }
            }
        }
    }

    // From the front of one facet to the front of the next, through the cell that both face.
    private void Pass(int from, in Link link, int[] winding, int sense)
    {
        if (link.FromBack)
        {
            Cross(from, winding, sense);
        }

        if (link.ToBack)
        {
            Cross(link.Facet, winding, -sense);
        }
    }

    private void Cross(int facet, int[] winding, int sense)
    {
        if (facet >= _loopOfFacet.Length)
        {
            winding[_arrangement.Found.OperandSet.OperandOf[_patches.FirstTriangle[facet - _loopOfFacet.Length]]] += sense;
            return;
        }

        foreach (Coverage.Cover cover in _coverage[_loopOfFacet[facet]])
        {
            winding[cover.Operand] += sense * cover.Sense;
        }
    }

    private void Visit(int facet, int[] winding, Expression expression, bool[] seen)
    {
        seen[facet] = true;
        bool front = expression.IsInside(winding);
        Cross(facet, winding, 1);
        bool back = expression.IsInside(winding);
        Cross(facet, winding, -1);
        Kept[facet] = (sbyte)(front == back ? 0 : back ? 1 : -1);
    }

    private Probe ProbeOf(int facet)
    {
        if (facet < _loopOfFacet.Length)
        {
            int loop = _loopOfFacet[facet];
            return _arrangement.ProbeAt(_loops.FirstSide[loop], _loops.SheetOf[loop]);
        }

        return Probe.InFrontOf(_arrangement.Found, _patches.FirstTriangle[facet - _loopOfFacet.Length]);
    }
}
