using ShellForge.Geometry.Booleans.Arranging;
using ShellForge.Geometry.Booleans.Exact;
using ShellForge.Geometry.Booleans.Ingest;
using ShellForge.Geometry.Booleans.Tables;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans.Rounding;

/// <summary>
/// All regions of a round on their rounded vertices. Where rounding broke a region, its edges are led through the corner that got in
/// their way, in every region that shares the edge, so both sides of an edge always stay the same. Only real edges are led, never
/// diagonals: regions are triangulated after.
/// </summary>
internal sealed class RegionSet
{
    // A region with this many corrections is left to the next round.
    private const int MostCorrections = 2000;

    // Regions from which on more than one core is worth waking.
    private const int WorthThreads = 128;
    private readonly List<LatticePoint3> _vertices;
    private readonly List<PlanarRegion> _regions;
    private readonly RegionFiller _filler;
    private readonly Func<int, int, PlanarRegion?> _releaseNeighbour;
    private readonly Func<int, bool> _isHeld;
    private RegionIndex? _index;

    /// <param name="vertices">Rounded vertices.</param>
    /// <param name="regions">Regions on them; grows when untouched triangles have to be cut.</param>
    /// <param name="releaseNeighbour">Takes the untouched triangle with this edge out of the result and returns it as a region.</param>
    /// <param name="isHeld">Whether a vertex belongs to untouched triangles and cannot be merged away.</param>
    public RegionSet(
        List<LatticePoint3> vertices, List<PlanarRegion> regions, Func<int, int, PlanarRegion?> releaseNeighbour,
        Func<int, bool> isHeld)
    {
        _vertices = vertices;
        _regions = regions;
        _releaseNeighbour = releaseNeighbour;
        _isHeld = isHeld;
        _filler = new RegionFiller(vertices);
    }

    /// <summary>
    /// Farther than so many steps from any of the four ends, two crossing edges get a vertex of their own; as a rule they don't:
    /// what did not cross before rounding crosses near an end.
    /// </summary>
    public double CrossingReach { get; init; } = double.PositiveInfinity;

    /// <summary>
    /// Fills all regions and adds their triangles, their tags, and what is known of them (<see cref="Operand.KnownApart"/>).
    /// </summary>
    public void Fill(List<int> corners, List<int> tags, List<int> apart, int threads, CancellationToken ct)
    {
        List<int>[] triangles = Settle(threads, ct);
        for (int r = 0; r < _regions.Count; r++)
        {
            corners.AddRange(triangles[r]);
            for (int i = 0; i < triangles[r].Count; i += 3)
            {
                tags.Add(_regions[r].Tag);
                apart.Add(_regions[r].IsPlanar ? 1 + r : -1);
            }
        }
    }

    private List<int>[] Settle(int threads, CancellationToken ct)
    {
        Queue<int> open = new(Enumerable.Range(0, _regions.Count));
        HashSet<int> isOpen = [.. open];
        List<List<int>?> triangles = [.. new List<int>?[_regions.Count]];
        List<int>?[] ahead = FilledAhead(threads, ct);
        HashSet<int> touched = [];
        int corrections = 0;
        while (open.TryDequeue(out int r))
        {
            isOpen.Remove(r);
            if (r < ahead.Length && ahead[r] is { } done)
            {
                triangles[r] = done;
                ahead[r] = null;
                continue;
            }

            ct.ThrowIfCancellationRequested();
            List<int> filled = [];
            triangles[r] = filled;
            while (_filler.Fill(_regions[r], filled) is { } conflict)
            {
                touched.Clear();
                if (corrections++ > MostCorrections || !Correct(_regions[r], conflict, touched))
                {
                    _filler.Fan(_regions[r], filled);
                    break;
                }

                while (triangles.Count < _regions.Count)
                {
                    triangles.Add(null);
                    touched.Add(triangles.Count - 1);
                }

                foreach (int other in touched.Order())
                {
                    if (other < ahead.Length)
                    {
                        ahead[other] = null;
                    }

                    if (other != r && isOpen.Add(other))
                    {
                        open.Enqueue(other);
                    }
                }
            }
        }

        return [.. triangles.Select(t => t ?? [])];
    }

    // All regions as they are, by all cores; null where something is to be corrected first. What a correction touches is filled again.
    private List<int>?[] FilledAhead(int threads, CancellationToken ct)
    {
        List<int>?[] filled = new List<int>?[_regions.Count];
        int runs = ParallelRuns.Count(filled.Length, WorthThreads, threads);
        ParallelRuns.ForEach(runs, threads, () => runs == 1 ? _filler : new RegionFiller(_vertices), (run, filler) =>
        {
            (int from, int to) = ParallelRuns.Range(run, runs, filled.Length);
            for (int r = from; r < to; r++)
            {
                ct.ThrowIfCancellationRequested();
                List<int> corners = new(3 * _regions[r].Edges.Count);
                filled[r] = filler.Fill(_regions[r], corners) is null ? corners : null;
            }
        }, ct);
        return filled;
    }

    /// <summary>Leads every edge through the regions' vertices within the reach, in their order along it.</summary>
    public void LeadThroughNearVertices(int reach)
    {
        BuildIndex();
        int[] vertices = [.. _index!.OfVertex.Keys.Order()];
        LatticePoint3[] places = [.. vertices.Select(v => _vertices[v])];
        MortonTree tree = new(places, [.. Enumerable.Range(0, places.Length).SelectMany(i => (int[])[i, i, i])]);
        List<int> near = [];
        HashSet<int> touched = [];
        foreach (long key in _index!.OfEdge.Keys.Order().ToArray())
        {
            int from = (int)(key >> 32), to = (int)(key & 0xFFFFFFFF);
            LatticePoint3 a = _vertices[from], b = _vertices[to];
            near.Clear();
            tree.QuerySegment(a, b, reach, near);
            List<(double Along, int Vertex)> via = [];
            foreach (int i in near)
            {
                int v = vertices[i];
                if (v != from && v != to && SquaredDistance(places[i], a, b) <= (double)reach * reach)
                {
                    via.Add((Along(places[i], a, b), v));
                }
            }

            via.Sort();
            int last = from;
            foreach ((_, int v) in via)
            {
                if (Lead(last, to, v, touched))
                {
                    last = v;
                }
            }
        }
    }

    /// <summary>
    /// Draws edges of other regions, and single vertices, into every region whose plane they keep within the reach: what touches a
    /// face to within rounding is made to touch it along its own edges.
    /// </summary>
    public void ImprintNearEdges(int reach)
    {
        BuildIndex();
        long[] keys = [.. _index!.OfEdge.Keys.Order()];
        LatticePoint3[] places = [.. _vertices];
        MortonTree tree = new(places, [.. keys.SelectMany(k => (int[])[(int)(k >> 32), (int)(k & 0xFFFFFFFF), (int)(k & 0xFFFFFFFF)])]);
        List<int> near = [];
        HashSet<int> own = [];
        for (int r = 0; r < _regions.Count; r++)
        {
            PlanarRegion region = _regions[r];
            IntBox box = IntBox.Empty;
            own.Clear();
            foreach ((int from, int to) in region.Edges)
            {
                box.Include(_vertices[from]);
                own.Add(from);
                own.Add(to);
            }

            near.Clear();
            tree.Query(box.Grown(reach), near);
            near.Sort();
            foreach (int i in near)
            {
                int from = (int)(keys[i] >> 32), to = (int)(keys[i] & 0xFFFFFFFF);
                bool fromNear = own.Contains(from) || NearPlanarFaces.Distance(region.Plane, _vertices[from]) <= reach;
                bool toNear = own.Contains(to) || NearPlanarFaces.Distance(region.Plane, _vertices[to]) <= reach;
                if (fromNear && toNear && !_index.OfEdge[keys[i]].Contains(r))
                {
                    region.Edges.Add((from, to));
                    region.Edges.Add((to, from));
                    _index.Add(from, to, r);
                }
                else if (fromNear != toNear)
                {
                    int vertex = fromNear ? from : to;
                    if (!own.Contains(vertex))
                    {
                        region.Loose.Add(vertex);
                        _index.AddVertex(vertex, r);
                    }
                }
            }
        }
    }

    private static double Along(LatticePoint3 p, LatticePoint3 a, LatticePoint3 b) =>
        (((double)p.X - a.X) * ((double)b.X - a.X)) + (((double)p.Y - a.Y) * ((double)b.Y - a.Y))
            + (((double)p.Z - a.Z) * ((double)b.Z - a.Z));

    private bool Correct(PlanarRegion region, in RegionFiller.Conflict conflict, HashSet<int> touched)
    {
        BuildIndex();
        if (conflict.EdgeFrom < 0)
        {
            return Merge(conflict.From, conflict.To, touched);
        }

        if (conflict.To < 0)
        {
            return Lead(conflict.EdgeFrom, conflict.EdgeTo, conflict.From, touched);
        }

        // Of four corners the one nearest to the other edge gets that edge led through it.
        int a = conflict.EdgeFrom, b = conflict.EdgeTo, c = conflict.From, d = conflict.To;
        double best = double.PositiveInfinity;
        (int From, int To, int Via) lead = default;
        foreach ((int from, int to, int via) in (ReadOnlySpan<(int, int, int)>)[(a, b, c), (a, b, d), (c, d, a), (c, d, b)])
        {
            double distance = SquaredDistance(_vertices[via], _vertices[from], _vertices[to]);
            if (distance < best && via != from && via != to)
            {
                best = distance;
                lead = (from, to, via);
            }
        }

        return best <= CrossingReach * CrossingReach
            ? Lead(lead.From, lead.To, lead.Via, touched)
            : LeadThroughCrossing(new Drawing(region.Plane), a, b, c, d, touched);
    }

    private bool LeadThroughCrossing(in Drawing drawing, int a, int b, int c, int d, HashSet<int> touched)
    {
        LatticePoint3 p = _vertices[a], q = _vertices[b];
        double sideP = drawing.Orient(_vertices[c], _vertices[d], p), sideQ = drawing.Orient(_vertices[c], _vertices[d], q);
        double share = sideP / (sideP - sideQ);
        int vertex = _vertices.Count;
        _vertices.Add(new LatticePoint3(Between(p.X, q.X, share), Between(p.Y, q.Y, share), Between(p.Z, q.Z, share)));
        return Lead(a, b, vertex, touched) & Lead(c, d, vertex, touched);
    }

    private static int Between(int from, int to, double share) => (int)Math.Floor(from + (share * ((double)to - from)) + 0.5);

    private bool Lead(int from, int to, int via, HashSet<int> touched)
    {
        long key = RegionIndex.Key(from, to);
        if (_releaseNeighbour(from, to) is { } released)
        {
            AddRegion(released);
        }

        if (!_index!.OfEdge.Remove(key, out List<int>? regions))
        {
            return false;
        }

        foreach (int r in regions)
        {
            List<(int From, int To)> edges = _regions[r].Edges;
            for (int i = edges.Count - 1; i >= 0; i--)
            {
                (int p, int q) = edges[i];
                if (RegionIndex.Key(p, q) == key)
                {
                    edges[i] = (p, via);
                    edges.Add((via, q));
                    touched.Add(r);
                }
            }

            _index.Add(from, via, r);
            _index.Add(via, to, r);
        }

        return true;
    }

    private bool Merge(int a, int b, HashSet<int> touched)
    {
        (int keep, int drop) = _isHeld(b) ? (b, a) : (a, b);
        if (_isHeld(drop))
        {
            return false;
        }

        if (!_index!.OfVertex.Remove(drop, out List<int>? regions))
        {
            regions = [];
        }

        foreach (int r in regions)
        {
            touched.Add(r);
            List<(int From, int To)> edges = _regions[r].Edges;
            for (int i = 0; i < edges.Count; i++)
            {
                (int p, int q) = edges[i];
                if (p == drop || q == drop)
                {
                    edges[i] = (p == drop ? keep : p, q == drop ? keep : q);
                    _index.Add(edges[i].From, edges[i].To, r);
                }
            }

            for (int i = 0; i < _regions[r].Loose.Count; i++)
            {
                _regions[r].Loose[i] = _regions[r].Loose[i] == drop ? keep : _regions[r].Loose[i];
            }
        }

        return regions.Count > 0;
    }

    private void BuildIndex()
    {
        if (_index is null)
        {
            _index = new RegionIndex();
            for (int r = 0; r < _regions.Count; r++)
            {
                _index.Add(_regions[r], r);
            }
        }
    }

    private void AddRegion(PlanarRegion region)
    {
        _regions.Add(region);
        _index!.Add(region, _regions.Count - 1);
    }

    private static double SquaredDistance(LatticePoint3 p, LatticePoint3 a, LatticePoint3 b)
    {
        Point3 along = new((double)b.X - a.X, (double)b.Y - a.Y, (double)b.Z - a.Z);
        Point3 toPoint = new((double)p.X - a.X, (double)p.Y - a.Y, (double)p.Z - a.Z);
        double share = Math.Clamp(Point3.Dot(toPoint, along) / Point3.Dot(along, along), 0, 1);
        Point3 off = toPoint - (share * along);
        return Point3.Dot(off, off);
    }
}
