using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;

namespace ShellForge.Geometry.Measuring;

/// <summary>Walks the strokes of level sections. Heights may come in any order; rising ones touch each triangle few times.</summary>
internal sealed class SectionSweep
{
    private const double FlatSteps = 2;

    private readonly ImmutableArray<LatticePoint3> _vertices;
    private readonly ImmutableArray<int> _triangles;

    /// <summary>The triangle across each half-edge (3 t + corner), found by its ends.</summary>
    private readonly int[] _across;

    /// <summary>Triangles by their lowest vertex.</summary>
    private readonly int[] _byLowest;
    private readonly int[] _lowest;
    private readonly int[] _highest;
    private readonly int[] _visited;
    private readonly List<int> _active = [];
    private int _next;
    private int _lastLevel = int.MinValue;
    private int _round;

    public SectionSweep(Mesh mesh)
    {
        _vertices = mesh.Vertices;
        _triangles = mesh.Triangles;
        int count = mesh.TriangleCount;
        _lowest = new int[count];
        _highest = new int[count];
        _visited = new int[count];
        _byLowest = new int[count];
        for (int t = 0; t < count; t++)
        {
            int a = Height(t, 0), b = Height(t, 1), c = Height(t, 2);
            _lowest[t] = Math.Min(a, Math.Min(b, c));
            _highest[t] = Math.Max(a, Math.Max(b, c));
            _byLowest[t] = t;
        }

        Array.Sort((int[])_lowest.Clone(), _byLowest);
        _across = Neighbours();
    }

    /// <summary>Loops of the section between a level and the next lattice step, solid on the left.</summary>
    public List<ImmutableArray<Point2>> LoopsAt(int level)
    {
        if (level < _lastLevel)
        {
            _active.Clear();
            _next = 0;
        }

        _lastLevel = level;
        while (_next < _byLowest.Length && _lowest[_byLowest[_next]] <= level)
        {
            _active.Add(_byLowest[_next++]);
        }

        _active.RemoveAll(t => _highest[t] <= level);
        _active.Sort();
        _round++;
        var loops = new List<ImmutableArray<Point2>>();
        foreach (int t in _active)
        {
            if (_visited[t] != _round)
            {
                ImmutableArray<Point2> loop = Walk(t, level);
                if (loop.Length >= 3)
                {
                    loops.Add(loop);
                }
            }
        }

        return loops;
    }

    // Of the two crossed edges, the walk leaves by the one that goes up along the triangle: seen from above the outside then lies
    // to the right.
    private ImmutableArray<Point2> Walk(int start, int level)
    {
        ImmutableArray<Point2>.Builder corners = ImmutableArray.CreateBuilder<Point2>();
        int t = start;
        do
        {
            _visited[t] = _round;
            int exit = ExitEdge(t, level);
            int other = _across[(3 * t) + exit];
            if (!InOnePlane(t, other))
            {
                Point2 corner = Crossing(_triangles[(3 * t) + exit], _triangles[(3 * t) + ((exit + 1) % 3)], level);
                if (corners.Count == 0 || corners[^1] != corner)
                {
                    corners.Add(corner);
                }
            }

            t = other;
        }
        while (t != start);

        while (corners.Count > 1 && corners[0] == corners[^1])
        {
            corners.RemoveAt(corners.Count - 1);
        }

        return Loop.FromSmallest(WithoutFlatCorners(corners));
    }

    // The two triangles of a wall that rounding bent by a step give a corner that is none: nearer than two steps to the chord.
    private static List<Point2> WithoutFlatCorners(ImmutableArray<Point2>.Builder corners)
    {
        var kept = new List<Point2>(corners.Count);
        for (int i = 0; i < corners.Count; i++)
        {
            Point2 before = kept.Count > 0 ? kept[^1] : corners[^1];
            Point2 chord = corners[(i + 1) % corners.Count] - before;
            double off = Math.Abs(Point2.Cross(chord, corners[i] - before));
            if (off > FlatSteps * Lattice.Step * chord.Length || Point2.Dot(chord, corners[i] - before) < 0)
            {
                kept.Add(corners[i]);
            }
        }

        return kept;
    }

    private int ExitEdge(int t, int level)
    {
        for (int corner = 0; corner < 3; corner++)
        {
            if (Height(t, corner) <= level && Height(t, (corner + 1) % 3) > level)
            {
                return corner;
            }
        }

        throw new InvalidOperationException("A triangle that a level crosses has no edge that goes up through it.");
    }

    // The same two ends give the same point from either triangle: the lower-numbered end comes first.
    private Point2 Crossing(int a, int b, int level)
    {
        LatticePoint3 p = _vertices[Math.Min(a, b)];
        LatticePoint3 q = _vertices[Math.Max(a, b)];
        double share = (level + 0.5 - p.Z) / (q.Z - p.Z);
        return new Point2(
            Math.Floor(p.X + (share * ((double)q.X - p.X)) + 0.5) * Lattice.Step,
            Math.Floor(p.Y + (share * ((double)q.Y - p.Y)) + 0.5) * Lattice.Step);
    }

    // Exact: differences fit 26 bits, the determinant fits 128.
    private bool InOnePlane(int t, int other)
    {
        LatticePoint3 a = Vertex(t, 0), b = Vertex(t, 1), c = Vertex(t, 2);
        for (int corner = 0; corner < 3; corner++)
        {
            LatticePoint3 d = Vertex(other, corner);
            long ux = b.X - a.X, uy = b.Y - a.Y, uz = b.Z - a.Z;
            long vx = c.X - a.X, vy = c.Y - a.Y, vz = c.Z - a.Z;
            Int128 determinant = ((Int128)((uy * vz) - (uz * vy)) * (d.X - a.X)) + ((Int128)((uz * vx) - (ux * vz)) * (d.Y - a.Y))
                + ((Int128)((ux * vy) - (uy * vx)) * (d.Z - a.Z));
            if (determinant != 0)
            {
                return false;
            }
        }

        return true;
    }

    private int[] Neighbours()
    {
        var edges = new Dictionary<(int From, int To), int>(_triangles.Length);
        for (int h = 0; h < _triangles.Length; h++)
        {
            edges[(_triangles[h], _triangles[h % 3 == 2 ? h - 2 : h + 1])] = h / 3;
        }

        int[] across = new int[_triangles.Length];
        for (int h = 0; h < _triangles.Length; h++)
        {
            across[h] = edges.TryGetValue((_triangles[h % 3 == 2 ? h - 2 : h + 1], _triangles[h]), out int other)
                ? other
                : throw new ArgumentException("Only closed meshes have sections.");
        }

        return across;
    }

    private int Height(int t, int corner) => _vertices[_triangles[(3 * t) + corner]].Z;

    private LatticePoint3 Vertex(int t, int corner) => _vertices[_triangles[(3 * t) + corner]];
}
