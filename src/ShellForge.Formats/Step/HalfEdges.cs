using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Formats.Step;

/// <summary>
/// The half-edges of a closed mesh: number 3 t + k runs from corner k of triangle t to the next one, and has a twin that runs back.
/// </summary>
internal sealed class HalfEdges
{
    private readonly int[] _twin;
    private readonly Point3[] _points;

    /// <param name="mesh">The mesh.</param>
    /// <param name="widen">What x and y are multiplied by.</param>
    /// <exception cref="ArgumentException">An edge has no twin, or more than one: the mesh is not closed.</exception>
    public HalfEdges(Mesh mesh, double widen)
    {
        Mesh = mesh;
        _points = [.. mesh.Vertices.Select(v => new Point3(widen * v.X, widen * v.Y, v.Z))];
        _twin = new int[mesh.Triangles.Length];
        var open = new Dictionary<(int From, int To), int>(mesh.Triangles.Length);
        for (int e = 0; e < _twin.Length; e++)
        {
            if (open.Remove((To(e), From(e)), out int twin))
            {
                (_twin[e], _twin[twin]) = (twin, e);
            }
            else if (!open.TryAdd((From(e), To(e)), e))
            {
                throw new ArgumentException("Two triangles run along an edge in one direction.");
            }
        }

        if (open.Count > 0)
        {
            throw new ArgumentException("The mesh is open.");
        }
    }

    public Mesh Mesh { get; }

    public int Count => _twin.Length;

    /// <summary>A vertex in lattice steps.</summary>
    public Point3 At(int vertex) => _points[vertex];

    /// <summary>Where a half-edge begins, in lattice steps.</summary>
    public Point3 Start(int e) => _points[From(e)];

    public int From(int e) => Mesh.Triangles[e];

    public int To(int e) => Mesh.Triangles[Next(e)];

    public int Twin(int e) => _twin[e];

    public static int Next(int e) => e % 3 == 2 ? e - 2 : e + 1;

    public static int TriangleOf(int e) => e / 3;
}
