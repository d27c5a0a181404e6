using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Auditing;

/// <summary>
/// Finds all pairs of triangles that meet outside a common corner or edge. Pairs whose boxes touch come from a walk of a box
/// tree; large meshes are walked by all cores in chunks whose findings are joined in order, so that the answer is the same.
/// </summary>
internal sealed class MeetingAudit<TOrientation>
    where TOrientation : struct, IOrientation
{
    private const int Chunk = 4096;
    private const int WorthThreads = 4 * Chunk;

    // A file of a million equal triangles has half a million million faults. Nobody reads more than this of one chunk.
    private const int MostFaultsPerChunk = 4096;

    private readonly AuditSurface _surface;
    private readonly BoxTree _tree;

    // The triangle at each place of the tree order, and the corner of its fan.
    private readonly int[] _triangleAt;
    private readonly int[] _fanAt;

    // The corner of the fan that all triangles below a node belong to; -1 where they belong to several or none.
    private readonly int[] _nodeFan;

    /// <param name="surface">The mesh.</param>
    /// <param name="triangles">The triangles that are not degenerate.</param>
    /// <param name="leastFan">From how many triangles on those round a corner are looked at by their sides.</param>
    public MeetingAudit(AuditSurface surface, IReadOnlyList<int> triangles, int leastFan = Fans.WorthTree)
    {
        _surface = surface;
        var boxes = new FloatBox[triangles.Count];
        for (int i = 0; i < boxes.Length; i++)
        {
            boxes[i] = surface.BoxOf(triangles[i]);
        }

        _tree = new BoxTree(boxes);
        _triangleAt = new int[boxes.Length];
        _fanAt = new int[boxes.Length];
        int[] fans = Fans.Of(surface, triangles, leastFan);
        for (int i = 0; i < boxes.Length; i++)
        {
            _triangleAt[i] = triangles[_tree.Order[i]];
            _fanAt[i] = fans[_tree.Order[i]];
        }

        _nodeFan = FansOfNodes();
    }

    /// <summary>All faults, in an order that depends on the mesh alone.</summary>
    public List<MeshFault> Run(CancellationToken ct)
    {
        int count = _triangleAt.Length;
        var found = new List<MeshFault>[(count + Chunk - 1) / Chunk];
        if (count < WorthThreads)
        {
            for (int chunk = 0; chunk < found.Length; chunk++)
            {
                ct.ThrowIfCancellationRequested();
                found[chunk] = RunChunk(chunk, ct);
            }
        }
        else
        {
            Parallel.For(0, found.Length, new ParallelOptions { CancellationToken = ct }, chunk => found[chunk] = RunChunk(chunk, ct));
        }

        IEnumerable<IGrouping<int, int>> fans = Enumerable.Range(0, count).Where(place => _fanAt[place] >= 0)
            .GroupBy(place => _fanAt[place]);
        return [.. found.SelectMany(f => f), .. fans.SelectMany(fan => RunFan(fan.Key, [.. fan], ct))];
    }

    // Children stand behind their parents.
    private int[] FansOfNodes()
    {
        ReadOnlySpan<BoxNode> nodes = _tree.Nodes;
        int[] fans = new int[nodes.Length];
        for (int n = nodes.Length - 1; n >= 0; n--)
        {
            ref readonly BoxNode node = ref nodes[n];
            fans[n] = node.Right != 0 ? Common(fans[n + 1], fans[node.Right])
                : _fanAt.AsSpan(node.First..node.End).ContainsAnyExcept(_fanAt[node.First]) ? -1 : _fanAt[node.First];
        }

        return fans;
    }

    private static int Common(int one, int other) => one == other ? one : -1;

    // The places of a fan's triangles, each against the sides of all others.
    private List<MeshFault> RunFan(int corner, int[] places, CancellationToken ct)
    {
        var faults = new List<MeshFault>();
        FloatBox[] sides = [.. places.Select(place => Fans.SideBox(_surface, _triangleAt[place], corner))];
        var tree = new BoxTree([.. sides]);
        int[] stack = new int[tree.Depth + 1];
        ReadOnlySpan<BoxNode> nodes = tree.Nodes;
        for (int i = 0; i < places.Length && faults.Count < MostFaultsPerChunk; i++)
        {
            ct.ThrowIfCancellationRequested();
            FloatBox box = _tree.Boxes[places[i]];
            int depth = 0;
            stack[depth++] = 0;
            while (depth > 0 && faults.Count < MostFaultsPerChunk)
            {
                int n = stack[--depth];
                ref readonly BoxNode node = ref nodes[n];
                if (!node.Box.Touches(box))
                {
                    continue;
                }

                if (node.Right != 0)
                {
                    stack[depth++] = node.Right;
                    stack[depth++] = n + 1;
                    continue;
                }

                for (int at = node.First; at < node.End; at++)
                {
                    // A pair in which each side touches the other's box is met twice, and looked at once.
                    int j = tree.Order[at];
                    FloatBox other = _tree.Boxes[places[j]];
                    if (j != i && sides[j].Touches(box) && (i < j || !sides[i].Touches(other)))
                    {
                        Test(_triangleAt[places[i]], _triangleAt[places[j]], box, other, faults);
                    }
                }
            }
        }

        return faults;
    }

    private List<MeshFault> RunChunk(int chunk, CancellationToken ct)
    {
        var faults = new List<MeshFault>();
        Span<int> stack = stackalloc int[_tree.Depth + 1];
        ReadOnlySpan<BoxNode> nodes = _tree.Nodes;
        ReadOnlySpan<FloatBox> boxes = _tree.Boxes;
        int end = Math.Min((chunk + 1) * Chunk, _triangleAt.Length);
        for (int i = chunk * Chunk; i < end && faults.Count < MostFaultsPerChunk; i++)
        {
            // The boxes of a fan's triangles all touch at its tip: one of them may have all others to look at. Those are met elsewhere, and
            // passed by whole nodes: a file of copies of one triangle is one fan.
            ct.ThrowIfCancellationRequested();
            FloatBox box = boxes[i];
            int fan = _fanAt[i];
            int depth = 0;
            stack[depth++] = 0;
            while (depth > 0 && faults.Count < MostFaultsPerChunk)
            {
                int n = stack[--depth];
                ref readonly BoxNode node = ref nodes[n];
                if (node.End <= i + 1 || (fan >= 0 && _nodeFan[n] == fan) || !node.Box.Touches(box))
                {
                    continue;
                }

                if (node.Right != 0)
                {
                    stack[depth++] = node.Right;
                    stack[depth++] = n + 1;
                    continue;
                }

                for (int j = Math.Max(node.First, i + 1); j < node.End; j++)
                {
                    if ((fan < 0 || _fanAt[j] != fan) && boxes[j].Touches(box))
                    {
                        Test(_triangleAt[i], _triangleAt[j], box, boxes[j], faults);
                    }
                }
            }
        }

        return faults;
    }

    private void Test(int s, int t, in FloatBox boxS, in FloatBox boxT, List<MeshFault> faults)
    {
        Meeting meeting = MeetingOf(s, t);
        if (meeting == Meeting.Proper)
        {
            return;
        }

        // The middle of what the boxes have in common.
        Point3 low = new(Math.Max(boxS.MinX, boxT.MinX), Math.Max(boxS.MinY, boxT.MinY), Math.Max(boxS.MinZ, boxT.MinZ));
        Point3 high = new(Math.Min(boxS.MaxX, boxT.MaxX), Math.Min(boxS.MaxY, boxT.MaxY), Math.Min(boxS.MaxZ, boxT.MaxZ));
        int first = _surface.Source[s];
        int second = _surface.Source[t];
        faults.Add(new MeshFault(
            meeting == Meeting.Crossing ? MeshFaultKind.CrossingTriangles : MeshFaultKind.OverlappingTriangles,
            _surface.Place(0.5 * (low + high)),
            Math.Min(first, second),
            Math.Max(first, second)));
    }

    private Meeting MeetingOf(int s, int t)
    {
        ReadOnlySpan<int> a = _surface.Triangles.AsSpan(3 * s, 3);
        ReadOnlySpan<int> b = _surface.Triangles.AsSpan(3 * t, 3);
        Point3[] p = _surface.Points;
        int shared = 0;
        int lastA = 0;
        int lastB = 0;
        int sumA = 0;
        int sumB = 0;
        for (int i = 0; i < 3; i++)
        {
            int j = a[i] == b[0] ? 0 : a[i] == b[1] ? 1 : a[i] == b[2] ? 2 : -1;
            if (j >= 0)
            {
                shared++;
                (lastA, lastB) = (i, j);
                sumA += i;
                sumB += j;
            }
        }

        switch (shared)
        {
            case 0:
                return TriangleMeeting<TOrientation>.Apart(p[a[0]], p[a[1]], p[a[2]], p[b[0]], p[b[1]], p[b[2]]);
            case 1:
                return TriangleMeeting<TOrientation>.AtCorner(
                    p[a[lastA]], p[a[(lastA + 1) % 3]], p[a[(lastA + 2) % 3]], p[b[(lastB + 1) % 3]], p[b[(lastB + 2) % 3]]);
            case 2:
                int thirdA = 3 - sumA;
                int thirdB = 3 - sumB;
                return TriangleMeeting<TOrientation>.AtEdge(
                    p[a[(thirdA + 1) % 3]], p[a[(thirdA + 2) % 3]], p[a[thirdA]], p[b[thirdB]]);
            default:
                return Meeting.Overlapping;
        }
    }
}
