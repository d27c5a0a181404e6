using ShellForge.Geometry.Booleans.Exact;
using ShellForge.Geometry.Booleans.Tables;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans.Rounding;

/// <summary>
/// Triangles for one region, by a constrained Delaunay triangulation of its rounded corners; or what rounding broke: two corners
/// drawn at one place, a corner on an edge, two edges that cross.
/// </summary>
internal sealed class RegionFiller
{
    private readonly List<LatticePoint3> _vertices;
    private readonly PlanarMesh _mesh = new();
    private readonly PairTable _net = new();
    private readonly List<(int From, int To)> _order = [];
    private int[] _local = [];
    private int[] _seen = [];
    private int _fill;
    private long[] _keys = [];
    private readonly List<int> _points = [];
    private long[] _u = new long[64];
    private long[] _v = new long[64];

    public RegionFiller(List<LatticePoint3> vertices) => _vertices = vertices;

    /// <summary>What rounding broke. Second corners are -1 where there is none.</summary>
    internal readonly record struct Conflict(int EdgeFrom, int EdgeTo, int From, int To);

    /// <summary>Adds the triangles' corners, or returns the first conflict and adds nothing.</summary>
    public Conflict? Fill(PlanarRegion region, List<int> corners)
    {
        NetEdges(region);
        if (_order.Count == 0)
        {
            return null;
        }

        // Both faces of a film that has collapsed are drawn and sorted alike, so that their triangles are the same and cancel.
        Drawing drawing = new(region.Plane);
        if (Place(region, drawing) is { } same)
        {
            return same;
        }

        if (!_mesh.Build(_u.AsSpan(0, _points.Count), _v.AsSpan(0, _points.Count)))
        {
            return OnOneLine();
        }

        SortEdges();
        foreach ((int from, int to) edge in _order)
        {
            if (_mesh.Fix(_local[edge.from], _local[edge.to], Net(edge), out int from, out int to) != PlanarMesh.Obstacle.None)
            {
                return new Conflict(edge.from, edge.to, _points[from], to < 0 ? -1 : _points[to]);
            }
        }

        _mesh.Improve();
        _mesh.FlipNeedles();
        region.IsPlanar = AddTriangles(corners);
        return null;
    }

    /// <summary>Any filling keeps the mesh closed: a cone over the directed edges. The next round resolves what it overlaps.</summary>
    public void Fan(PlanarRegion region, List<int> corners)
    {
        region.IsPlanar = false;
        NetEdges(region);
        int apex = _order[0].From;
        foreach ((int From, int To) edge in _order)
        {
            int net = Net(edge);
            for (int copy = Math.Abs(net); copy > 0 && edge.From != apex && edge.To != apex; copy--)
            {
                corners.Add(apex);
                corners.Add(net > 0 ? edge.From : edge.To);
                corners.Add(net > 0 ? edge.To : edge.From);
            }
        }
    }

    // Whether no place is covered twice.
    private bool AddTriangles(List<int> corners)
    {
        int[] multiplicity = _mesh.Multiplicity();
        bool isPlanar = true;
        for (int t = 0; t < multiplicity.Length; t++)
        {
            bool forward = multiplicity[t] > 0;
            isPlanar &= Math.Abs(multiplicity[t]) <= 1;
            for (int copy = Math.Abs(multiplicity[t]); copy > 0; copy--)
            {
                corners.Add(_points[_mesh.Corner(3 * t)]);
                corners.Add(_points[_mesh.Corner((3 * t) + (forward ? 1 : 2))]);
                corners.Add(_points[_mesh.Corner((3 * t) + (forward ? 2 : 1))]);
            }
        }

        return isPlanar;
    }

    // Edges that run both ways cancel but stay as lines to be kept; edges without length vanish.
    private void NetEdges(PlanarRegion region)
    {
        _net.Clear();
        _order.Clear();
        foreach ((int from, int to) in region.Edges)
        {
            if (from == to)
            {
                continue;
            }

            ref int net = ref _net.At(from, to, out bool isNew);
            net += from < to ? 1 : -1;
            if (isNew)
            {
                _order.Add((Math.Min(from, to), Math.Max(from, to)));
            }
        }
    }

    private int Net((int From, int To) edge) => _net.Find(edge.From, edge.To, 0);

    private void SortEdges()
    {
        Span<(int From, int To)> edges = System.Runtime.InteropServices.CollectionsMarshal.AsSpan(_order);
        if (_keys.Length < edges.Length)
        {
            _keys = new long[2 * edges.Length];
        }

        for (int i = 0; i < edges.Length; i++)
        {
            int a = _local[edges[i].From], b = _local[edges[i].To];
            _keys[i] = ((long)Math.Min(a, b) << 32) | (uint)Math.Max(a, b);
        }

        _keys.AsSpan(0, edges.Length).Sort(edges);
    }

    private Conflict? Place(PlanarRegion region, Drawing drawing)
    {
        int axisU = drawing.IsForward ? drawing.U : drawing.V, axisV = drawing.IsForward ? drawing.V : drawing.U;
        _points.Clear();
        if (_seen.Length < _vertices.Count)
        {
            _local = new int[2 * _vertices.Count];
            _seen = new int[2 * _vertices.Count];
            _fill = 0;
        }

        _fill++;
        foreach ((int from, int to) in _order)
        {
            Take(from);
            Take(to);
        }

        foreach (int point in region.Loose)
        {
            Take(point);
        }

        _points.Sort((a, b) =>
        {
            int byU = Drawing.Pick(_vertices[a], axisU).CompareTo(Drawing.Pick(_vertices[b], axisU));
            int byPlace = byU != 0 ? byU : Drawing.Pick(_vertices[a], axisV).CompareTo(Drawing.Pick(_vertices[b], axisV));
            return byPlace != 0 ? byPlace : a.CompareTo(b);
        });
        if (_points.Count > _u.Length)
        {
            _u = new long[2 * _points.Count];
            _v = new long[2 * _points.Count];
        }

        for (int i = 0; i < _points.Count; i++)
        {
            _u[i] = Drawing.Pick(_vertices[_points[i]], axisU);
            _v[i] = Drawing.Pick(_vertices[_points[i]], axisV);
            _local[_points[i]] = i;
            if (i > 0 && _u[i] == _u[i - 1] && _v[i] == _v[i - 1])
            {
                return new Conflict(-1, -1, _points[i - 1], _points[i]);
            }
        }

        return null;

        void Take(int point)
        {
            if (_seen[point] != _fill)
            {
                _seen[point] = _fill;
                _points.Add(point);
            }
        }
    }

    // All corners on one line: an edge that passes over a corner is a conflict; when none does, all edges cancel.
    private Conflict? OnOneLine()
    {
        foreach ((int from, int to) edge in _order)
        {
            int low = Math.Min(_local[edge.from], _local[edge.to]);
            if (low + 1 < Math.Max(_local[edge.from], _local[edge.to]))
            {
                return new Conflict(edge.from, edge.to, _points[low + 1], -1);
            }
        }

        return null;
    }
}
