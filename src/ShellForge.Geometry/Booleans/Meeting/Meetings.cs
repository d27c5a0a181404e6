using ShellForge.Geometry.Booleans.Exact;

namespace ShellForge.Geometry.Booleans.Meeting;

/// <summary>
/// What a run of pairs of triangles has in common, with points under numbers of its own: cores work on runs apart from each other, and
/// <see cref="Intersections"/> takes the runs in their order, so that it holds the same as if one had gone through all pairs.
/// </summary>
internal sealed class Meetings
{
    // Vertices are asked for again and again by neighbouring pairs; the last asked for are kept by the low bits of their numbers.
    private const int Remembered = 1024;
    private readonly (int Vertex, int Point)[] _recent = new (int, int)[Remembered];
    private readonly OperandSet _scene;

    public Meetings(OperandSet scene)
    {
        _scene = scene;
        Array.Fill(_recent, (-1, -1));
    }

    public PointStore Points { get; } = new();

    /// <summary>Vertices of the scene and the points that they are.</summary>
    public List<(int Vertex, int Point)> VertexPoints { get; } = [];

    /// <summary>Points inside real edges.</summary>
    public List<(int Edge, int Point)> EdgePoints { get; } = [];

    /// <summary>Points in the closed triangle.</summary>
    public List<(int Triangle, int Point)> TrianglePoints { get; } = [];

    /// <summary>Real edges that lie in the plane of a triangle which they meet.</summary>
    public List<(int Edge, int Triangle)> Imprints { get; } = [];

    /// <summary>Segments common to two triangles of different planes, crossing the inside of both faces.</summary>
    public List<Interval> Intervals { get; } = [];

    /// <summary>Triangles of one plane that touch or overlap.</summary>
    public List<(int First, int Second)> Coplanar { get; } = [];

    /// <summary>The point that a vertex of the scene is.</summary>
    public int VertexPoint(int triangle, int k)
    {
        int vertex = _scene.VertexNumber(triangle, k);
        ref (int Vertex, int Point) recent = ref _recent[vertex & (Remembered - 1)];
        if (recent.Vertex != vertex)
        {
            SetVertexPoint(vertex, Points.Add(_scene.Corner(triangle, k)));
        }

        return recent.Point;
    }

    public void SetVertexPoint(int vertex, int point)
    {
        ref (int Vertex, int Point) recent = ref _recent[vertex & (Remembered - 1)];
        if (recent != (vertex, point))
        {
            recent = (vertex, point);
            VertexPoints.Add((vertex, point));
        }
    }
}
