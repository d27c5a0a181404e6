using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Geometry.Measuring;

/// <summary>
/// The triangles of a mesh in a box tree, made once and asked often: for the nearest place, for rays, for membership, for gaps. All
/// queries of this folder run on it. It keeps no state between questions, so many threads may ask at a time.
/// </summary>
public sealed class SurfaceTree
{
    private readonly BoxTree _tree;
    private readonly Triangle3[] _triangles;
    private readonly int[] _numbers;

    /// <summary>The tree of a mesh.</summary>
    /// <param name="mesh">Any mesh; questions about inside and outside ask for one that bounds a solid.</param>
    public SurfaceTree(Mesh mesh)
        : this(mesh, mesh.Vertices.Select(v => v.ToMillimetres()).ToArray())
    {
    }

    private SurfaceTree(Mesh mesh, Point3[] places)
    {
        Mesh = mesh;
        int count = mesh.TriangleCount;
        var boxes = new FloatBox[count];
        var triangles = new Triangle3[count];
        for (int t = 0; t < count; t++)
        {
            triangles[t] = new Triangle3(places[mesh.Triangles[3 * t]], places[mesh.Triangles[(3 * t) + 1]],
                places[mesh.Triangles[(3 * t) + 2]]);
            boxes[t] = triangles[t].Box();
        }

        _tree = new BoxTree(boxes);
        _numbers = _tree.Order.ToArray();
        _triangles = new Triangle3[count];
        for (int slot = 0; slot < count; slot++)
        {
            _triangles[slot] = triangles[_numbers[slot]];
        }

        Places = places;
    }

    /// <summary>The mesh as it was given; for a moved tree, before the move.</summary>
    public Mesh Mesh { get; }

    /// <summary>Whether there is no triangle.</summary>
    public bool IsEmpty => _triangles.Length == 0;

    /// <summary>The places of the mesh's vertices, mm.</summary>
    internal Point3[] Places { get; }

    /// <summary>Nodes of the tree, the root first.</summary>
    internal ReadOnlySpan<BoxNode> Nodes => _tree.Nodes;

    /// <summary>Triangles in tree order.</summary>
    internal ReadOnlySpan<Triangle3> Triangles => _triangles;

    /// <summary>Levels that a walk's stack must hold: each level leaves at most one node behind.</summary>
    internal int StackSize => _tree.Depth + 1;

    /// <summary>The number in the mesh of the triangle at a place of the tree order.</summary>
    internal int NumberOf(int slot) => _numbers[slot];

    /// <summary>The same body, rigidly moved. Vertices leave the lattice; nothing is rounded to it.</summary>
    public SurfaceTree Moved(Transform3 map) => new(Mesh, [.. Places.Select(map.Apply)]);

    /// <summary>The corners of a triangle of the mesh, mm.</summary>
    internal Triangle3 TriangleOf(int number) => new(
        Places[Mesh.Triangles[3 * number]], Places[Mesh.Triangles[(3 * number) + 1]], Places[Mesh.Triangles[(3 * number) + 2]]);
}
