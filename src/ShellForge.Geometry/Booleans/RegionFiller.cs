using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans;

/// <summary>Triangles for a region, by a constrained Delaunay triangulation of its rounded corners.</summary>
internal sealed class RegionFiller
{
    private readonly List<LatticePoint3> _vertices;
    private readonly List<int> _corners;
    private readonly List<int> _tags;
    private readonly PlanarMesh _mesh = new();
    private readonly Dictionary<long, int> _net = [];
    private readonly List<(int From, int To)> _order = [];

    public RegionFiller(List<LatticePoint3> vertices, List<int> corners, List<int> tags)
    {
        _vertices = vertices;
        _corners = corners;
        _tags = tags;
    }

    public int Fans { get; private set; }

    public void Fill(Region region)
    {
        NetEdges(region);
        if (_order.Count == 0)
        {
            return;
        }

        if (!TryTriangulate(region))
        {
            Fans++;
            Fan(region);
        }
    }

    // Edges that run both ways cancel but stay as lines to be kept; edges without length vanish.
    private void NetEdges(Region region)
    {
        _net.Clear();
        _order.Clear();
        foreach ((int from, int to) in region.Edges)
        {
            if (from == to)
            {
                continue;
            }

            long key = ((long)Math.Min(from, to) << 32) | (uint)Math.Max(from, to);
            ref int net = ref System.Runtime.InteropServices.CollectionsMarshal.GetValueRefOrAddDefault(_net, key, out bool known);
            net += from < to ? 1 : -1;
            if (!known)
            {
                _order.Add((Math.Min(from, to), Math.Max(from, to)));
            }
        }
    }

    private int Net((int From, int To) edge) => _net[((long)edge.From << 32) | (uint)edge.To];

    private bool TryTriangulate(Region region)
    {
        Drawing drawing = new(region.Plane);
        HashSet<int> used = [.. region.Loose];
        foreach ((int from, int to) in _order)
        {
            used.Add(from);
            used.Add(to);
        }

        int[] points = [.. used];
        Array.Sort(points, (a, b) =>
        {
            int byU = Drawing.Pick(_vertices[a], drawing.U).CompareTo(Drawing.Pick(_vertices[b], drawing.U));
            return byU != 0 ? byU : Drawing.Pick(_vertices[a], drawing.V).CompareTo(Drawing.Pick(_vertices[b], drawing.V));
        });
        long[] u = new long[points.Length];
        long[] v = new long[points.Length];
        Dictionary<int, int> local = new(points.Length);
        for (int i = 0; i < points.Length; i++)
        {
            u[i] = Drawing.Pick(_vertices[points[i]], drawing.U);
            v[i] = Drawing.Pick(_vertices[points[i]], drawing.V);
            local.Add(points[i], i);
            if (i > 0 && u[i] == u[i - 1] && v[i] == v[i - 1])
            {
                return false;
            }
        }

        if (!_mesh.Build(u, v))
        {
            return false;
        }

        foreach ((int from, int to) edge in _order)
        {
            if (_mesh.Fix(local[edge.from], local[edge.to], Net(edge), out _, out _) != PlanarMesh.Obstacle.None)
            {
                return false;
            }
        }

        _mesh.Improve();
        int[] multiplicity = _mesh.Multiplicity();
        for (int t = 0; t < multiplicity.Length; t++)
        {
            for (int copy = Math.Abs(multiplicity[t]); copy > 0; copy--)
            {
                bool forward = multiplicity[t] > 0;
                AddTriangle(
                    points[_mesh.Corner(3 * t)],
                    points[_mesh.Corner((3 * t) + (forward ? 1 : 2))],
                    points[_mesh.Corner((3 * t) + (forward ? 2 : 1))],
                    region.Tag);
            }
        }

        return true;
    }

    // Any filling of the cycles keeps the mesh closed; the next round finds what it overlaps.
    private void Fan(Region region)
    {
        int apex = _order[0].From;
        foreach ((int From, int To) edge in _order)
        {
            int net = Net(edge);
            for (int copy = Math.Abs(net); copy > 0; copy--)
            {
                if (edge.From != apex && edge.To != apex)
                {
                    AddTriangle(apex, net > 0 ? edge.From : edge.To, net > 0 ? edge.To : edge.From, region.Tag);
                }
            }
        }
    }

    private void AddTriangle(int a, int b, int c, int tag)
    {
        _corners.Add(a);
        _corners.Add(b);
        _corners.Add(c);
        _tags.Add(tag);
    }
}
