using System.Numerics;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Physics.Light;

/// <summary>Collects triangles and sorts them into a <see cref="ShadowTree"/> by the surface area heuristic over a few bins.</summary>
public sealed class ShadowTreeBuilder
{
    private const int Bins = 12;
    private const int LeafTriangles = 4;

    // Deeper than this a traversal stack would not hold: the rest becomes one leaf. Halves of a million triangles end at 20.
    private const int Deepest = 60;

    private readonly List<Vector3> _a = [];
    private readonly List<Vector3> _b = [];
    private readonly List<Vector3> _c = [];
    private readonly List<int> _materials = [];
    private readonly List<ShadowTree.Node> _nodes = [];
    private int[] _order = [];
    private Vector3[] _middles = [];

    /// <summary>Adds a triangle, its corners counter-clockwise seen from outside.</summary>
    public void Add(Point3 first, Point3 second, Point3 third, int material)
    {
        _a.Add(Single(first));
        _b.Add(Single(second));
        _c.Add(Single(third));
        _materials.Add(material);
    }

    /// <summary>Adds all triangles of a mesh.</summary>
    public void Add(Mesh mesh, int material)
    {
        for (int i = 0; i < mesh.Triangles.Length; i += 3)
        {
            Add(
                mesh.Vertices[mesh.Triangles[i]].ToMillimetres(),
                mesh.Vertices[mesh.Triangles[i + 1]].ToMillimetres(),
                mesh.Vertices[mesh.Triangles[i + 2]].ToMillimetres(),
                material);
        }
    }

    /// <summary>The tree of everything added so far.</summary>
    public ShadowTree Build()
    {
        int count = _a.Count;
        _order = [.. Enumerable.Range(0, count)];
        _middles = [.. Enumerable.Range(0, count).Select(i => (_a[i] + _b[i] + _c[i]) / 3)];
        _nodes.Clear();
        if (count > 0)
        {
            _nodes.Add(default);
            Split(0, 0, count, 0);
        }

        return new ShadowTree(
            [.. _nodes],
            [.. _order.Select(i => _a[i])],
            [.. _order.Select(i => _b[i] - _a[i])],
            [.. _order.Select(i => _c[i] - _a[i])],
            [.. _order.Select(i => _materials[i])]);
    }

    private void Split(int node, int from, int to, int depth)
    {
        (Vector3 low, Vector3 high) = Box(from, to);
        (int axis, float at) = to - from <= LeafTriangles || depth >= Deepest ? (-1, 0f) : Cut(from, to);
        int middle = axis < 0 ? from : Parted(from, to, axis, at);
        if (middle == from || middle == to)
        {
            _nodes[node] = new ShadowTree.Node(low, high, from, to - from, 0);
            return;
        }

        int children = _nodes.Count;
        _nodes.Add(default);
        _nodes.Add(default);
        _nodes[node] = new ShadowTree.Node(low, high, children, 0, axis);
        Split(children, from, middle, depth + 1);
        Split(children + 1, middle, to, depth + 1);
    }

    private (Vector3 Low, Vector3 High) Box(int from, int to)
    {
        var low = new Vector3(float.PositiveInfinity);
        var high = new Vector3(float.NegativeInfinity);
        for (int i = from; i < to; i++)
        {
            int t = _order[i];
            low = Vector3.Min(low, Vector3.Min(_a[t], Vector3.Min(_b[t], _c[t])));
            high = Vector3.Max(high, Vector3.Max(_a[t], Vector3.Max(_b[t], _c[t])));
        }

        return (low, high);
    }

    // The axis and place with the least expected work; axis -1 when no cut beats testing all triangles.
    private (int Axis, float At) Cut(int from, int to)
    {
        var low = new Vector3(float.PositiveInfinity);
        var high = new Vector3(float.NegativeInfinity);
        for (int i = from; i < to; i++)
        {
            low = Vector3.Min(low, _middles[_order[i]]);
            high = Vector3.Max(high, _middles[_order[i]]);
        }

        (int best, float place, float cost) = (-1, 0f, float.PositiveInfinity);
        var boxes = new (Vector3 Low, Vector3 High, int Count)[Bins];
        for (int axis = 0; axis < 3; axis++)
        {
            float width = high[axis] - low[axis];
            if (!(width > 0))
            {
                continue;
            }

            Array.Fill(boxes, (new Vector3(float.PositiveInfinity), new Vector3(float.NegativeInfinity), 0));
            for (int i = from; i < to; i++)
            {
                int t = _order[i];
                int bin = Math.Min(Bins - 1, (int)((_middles[t][axis] - low[axis]) / width * Bins));
                (Vector3 binLow, Vector3 binHigh, int binCount) = boxes[bin];
                boxes[bin] = (
                    Vector3.Min(binLow, Vector3.Min(_a[t], Vector3.Min(_b[t], _c[t]))),
                    Vector3.Max(binHigh, Vector3.Max(_a[t], Vector3.Max(_b[t], _c[t]))),
                    binCount + 1);
            }

            for (int cut = 1; cut < Bins; cut++)
            {
                float work = Work(boxes.AsSpan(0, cut)) + Work(boxes.AsSpan(cut));
                if (work < cost)
                {
                    (best, place, cost) = (axis, low[axis] + (width * cut / Bins), work);
                }
            }
        }

        return (best, place);
    }

    private static float Work(ReadOnlySpan<(Vector3 Low, Vector3 High, int Count)> bins)
    {
        var low = new Vector3(float.PositiveInfinity);
        var high = new Vector3(float.NegativeInfinity);
        int count = 0;
        foreach ((Vector3 binLow, Vector3 binHigh, int binCount) in bins)
        {
            low = Vector3.Min(low, binLow);
            high = Vector3.Max(high, binHigh);
            count += binCount;
        }

        Vector3 size = high - low;
        return count == 0 ? 0 : count * ((size.X * size.Y) + (size.Y * size.Z) + (size.Z * size.X));
    }

    private int Parted(int from, int to, int axis, float at)
    {
        int left = from;
        for (int i = from; i < to; i++)
        {
            if (_middles[_order[i]][axis] < at)
            {
                (_order[left], _order[i]) = (_order[i], _order[left]);
                left++;
            }
        }

        return left;
    }

    private static Vector3 Single(Point3 point) => new((float)point.X, (float)point.Y, (float)point.Z);
}
