namespace ShellForge.Geometry.Booleans;

/// <summary>
/// What the pairs of triangles have in common; the record between intersecting and arranging. Triangles, half-edges and edges go by
/// the scene's numbers.
/// </summary>
internal sealed class Intersections
{
    public Intersections(Scene scene)
    {
        Scene = scene;
        IsActive = new bool[scene.TriangleCount];
        PointOfVertex = new int[scene.VertexStart[^1]];
        Array.Fill(PointOfVertex, -1);
    }

    public Scene Scene { get; }

    public PointStore Points { get; } = new();

    /// <summary>Triangles that something meets outside their operand's own mesh structure.</summary>
    public bool[] IsActive { get; }

    public int[] PointOfVertex { get; }

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
        ref int point = ref PointOfVertex[Scene.VertexNumber(triangle, k)];
        if (point < 0)
        {
            point = Points.Add(Scene.Corner(triangle, k));
        }

        return point;
    }
}

/// <summary>A segment between two points, in the planes of two triangles.</summary>
internal readonly record struct Interval(int First, int Second, int From, int To);
