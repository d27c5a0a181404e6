using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans;

/// <summary>
/// Stage 4a: the boundary of the result as planar regions before rounding. A region is what is kept of one sheet facing one way
/// under one tag, given by its directed edges. Edges inside a region vanish, and so do points where a straight edge merely goes on.
/// </summary>
internal sealed class Boundary
{
    private readonly Arrangement _arrangement;
    private readonly Loops _loops;
    private readonly Coverage _coverage;
    private readonly Facets _facets;
    private readonly int[] _polarity;
    private readonly bool[] _isUsed;
    private readonly bool[] _isPinned;
    private readonly int[] _degree;
    private readonly (int First, int Second)[] _edgesAt;

    private Boundary(Arrangement arrangement, Loops loops, Coverage coverage, Facets facets, int[] polarity)
    {
        _arrangement = arrangement;
        _loops = loops;
        _coverage = coverage;
        _facets = facets;
        _polarity = polarity;
        _isUsed = new bool[arrangement.EdgeCount];
        _isPinned = new bool[arrangement.Points.Count];
        _degree = new int[arrangement.Points.Count];
        _edgesAt = new (int, int)[arrangement.Points.Count];
    }

    public List<Region> Regions { get; } = [];

    public static Boundary Of(
        Arrangement arrangement, Loops loops, Coverage coverage, Facets facets, Patches patches, int[] polarity, CancellationToken ct)
    {
        Boundary boundary = new(arrangement, loops, coverage, facets, polarity);
        long[] keys = boundary.LoopKeys();
        boundary.MarkUsed(keys);
        boundary.PinPatches(patches);
        (int[] head, int[] tail) = boundary.Chains();
        for (int sheet = 0; sheet < arrangement.Sheets.Count; sheet++)
        {
            ct.ThrowIfCancellationRequested();
            boundary.AddRegions(sheet, keys, head, tail);
        }

        return boundary;
    }

    // 0 for a loop that is dropped, else its sense in the lowest bit and its tag above; at least 2.
    private long[] LoopKeys()
    {
        long[] keys = new long[_loops.Count];
        for (int loop = 0; loop < keys.Length; loop++)
        {
            int kept = _facets.KeptLoop(loop);
            keys[loop] = kept == 0 ? 0 : ((TagOf(loop, kept) + 1L) << 1) | (kept > 0 ? 1L : 0L);
        }

        return keys;
    }

    // Of the faces that look where the result's face looks: a cutter's before a body's, then the lowest operand's.
    private long TagOf(int loop, int kept)
    {
        int best = int.MaxValue;
        long tag = 0;
        foreach (Coverage.Cover cover in _coverage[loop])
        {
            int polarity = _polarity[cover.Operand];
            int rank = cover.Operand + (cover.Sense * polarity != kept ? 1 << 20 : polarity > 0 ? 1 << 18 : 0);
            if (rank < best)
            {
                best = rank;
                tag = (uint)cover.Tag;
            }
        }

        return tag;
    }

    private void MarkUsed(long[] keys)
    {
        Grouping edgesOf = _arrangement.EdgesOf;
        for (int i = 0; i < edgesOf.ItemCount; i++)
        {
            if (keys[_loops.LoopOfSide[2 * i]] != keys[_loops.LoopOfSide[(2 * i) + 1]])
            {
                _isUsed[edgesOf.At(i)] = true;
            }
        }
    }

    private void PinPatches(Patches patches)
    {
        Intersections found = _arrangement.Found;
        Scene scene = found.Scene;
        for (int edge = 0; edge < _arrangement.EdgeCount; edge++)
        {
            int sceneEdge = _arrangement.SceneEdge(edge);
            if (sceneEdge >= 0 && (IsKept(patches, sceneEdge) || IsKept(patches, scene.Partner(sceneEdge))))
            {
                _isUsed[edge] = true;
            }
        }

        for (int operand = 0; operand < scene.Operands.Length; operand++)
        {
            int[] corners = scene.Operands[operand].Corners;
            for (int i = 0; i < corners.Length; i++)
            {
                int point = found.PointOfVertex[scene.VertexStart[operand] + corners[i]];
                if (point >= 0 && IsKept(patches, (3 * scene.TriangleStart[operand]) + i))
                {
                    _isPinned[point] = true;
                }
            }
        }
    }

    private bool IsKept(Patches patches, int halfEdge) =>
        halfEdge >= 0 && patches.Of(halfEdge / 3) is int patch and >= 0 && _facets.KeptPatch(patch) != 0;

    private (int[] Head, int[] Tail) Chains()
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
            _isPinned[point] |= _degree[point] != 2 || !IsStraight(_edgesAt[point].First, _edgesAt[point].Second);
        }

        // Only the first edge met of each chain stands for it, with the chain's ends in the edge's own sense.
        int[] head = new int[_isUsed.Length];
        int[] tail = new int[_isUsed.Length];
        bool[] seen = new bool[_isUsed.Length];
        Array.Fill(head, -1);
        for (int edge = 0; edge < _isUsed.Length; edge++)
        {
            if (_isUsed[edge] && !seen[edge])
            {
                seen[edge] = true;
                head[edge] = Walk(edge, _arrangement.From(edge), seen);
                tail[edge] = Walk(edge, _arrangement.To(edge), seen);
            }
        }

        return (head, tail);
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

    private int Walk(int edge, int point, bool[] seen)
    {
        while (!_isPinned[point])
        {
            edge = _edgesAt[point].First == edge ? _edgesAt[point].Second : _edgesAt[point].First;
            seen[edge] = true;
            point = _arrangement.From(edge) == point ? _arrangement.To(edge) : _arrangement.From(edge);
        }

        return point;
    }

    private bool IsStraight(int a, int b)
    {
        if (_arrangement.Segment(a) == _arrangement.Segment(b))
        {
            return true;
        }

        PointStore points = _arrangement.Points;
        Point3 da = points.Approximate(_arrangement.To(a)) - points.Approximate(_arrangement.From(a));
        Point3 db = points.Approximate(_arrangement.To(b)) - points.Approximate(_arrangement.From(b));
        Point3 cross = Point3.Cross(da, db);
        double bound = (Math.Abs(da.X) + Math.Abs(da.Y) + Math.Abs(da.Z) + Math.Abs(db.X) + Math.Abs(db.Y) + Math.Abs(db.Z) + 1)
            * (4 * PointStore.Slack);
        if (Math.Max(Math.Abs(cross.X), Math.Max(Math.Abs(cross.Y), Math.Abs(cross.Z))) > bound)
        {
            return false;
        }

        (Int128 ax, Int128 ay, Int128 az) = _arrangement.Direction(a);
        (Int128 bx, Int128 by, Int128 bz) = _arrangement.Direction(b);
        return (Int256.Product(ax, by) - Int256.Product(ay, bx)).Sign == 0
            && (Int256.Product(ay, bz) - Int256.Product(az, by)).Sign == 0
            && (Int256.Product(az, bx) - Int256.Product(ax, bz)).Sign == 0;
    }

    private void AddRegions(int sheet, long[] keys, int[] head, int[] tail)
    {
        ReadOnlySpan<int> edges = _arrangement.EdgesOf[sheet];
        int start = _arrangement.EdgesOf.StartOf(sheet);
        int firstRegion = Regions.Count;
        for (int i = 0; i < edges.Length; i++)
        {
            int edge = edges[i];
            if (head[edge] < 0)
            {
                continue;
            }

            long left = keys[_loops.LoopOfSide[2 * (start + i)]], right = keys[_loops.LoopOfSide[(2 * (start + i)) + 1]];
            if (left != 0)
            {
                RegionFor(sheet, left, firstRegion).Add(head[edge], tail[edge], (left & 1) != 0);
            }

            if (right != 0)
            {
                RegionFor(sheet, right, firstRegion).Add(tail[edge], head[edge], (right & 1) != 0);
            }
        }

        // A point that the result uses elsewhere may lie inside a region here: it must become a vertex of it.
        for (int r = firstRegion; r < Regions.Count; r++)
        {
            foreach (int point in _arrangement.PointsOf[sheet])
            {
                if (_degree[point] > 0 && _isPinned[point])
                {
                    Regions[r].Loose.Add(point);
                }
            }
        }
    }

    private Region RegionFor(int sheet, long key, int firstRegion)
    {
        for (int r = firstRegion; r < Regions.Count; r++)
        {
            if (Regions[r].Key == key)
            {
                return Regions[r];
            }
        }

        Plane plane = _arrangement.Sheets.Planes[sheet];
        Region region = new((key & 1) != 0 ? plane : plane.Flipped(), (int)((key >> 1) - 1), key);
        Regions.Add(region);
        return region;
    }
}

/// <summary>A planar region of the result: directed edges with the region to their left, seen from the plane's front.</summary>
internal sealed class Region
{
    public Region(Plane plane, int tag, long key)
    {
        Plane = plane;
        Tag = tag;
        Key = key;
    }

    public Plane Plane { get; }

    public int Tag { get; }

    public long Key { get; }

    public List<(int From, int To)> Edges { get; } = [];

    /// <summary>Points of the plane that may lie inside.</summary>
    public List<int> Loose { get; } = [];

    public void Add(int from, int to, bool forward) => Edges.Add(forward ? (from, to) : (to, from));
}
