using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Solids;

/// <summary>
/// A triangle mesh on the lattice: shared vertices, three vertex numbers a triangle, counter-clockwise seen from outside, and one
/// tag a triangle. A mesh may be anything; that it bounds a solid is the audit's word, carried by the type of an evaluated solid.
/// </summary>
public sealed class Mesh
{
    private string? _digest;

    /// <summary>Takes the arrays as they are; the caller gives them up.</summary>
    /// <exception cref="ArgumentException">A count does not fit, or a vertex number is out of range.</exception>
    public Mesh(ImmutableArray<LatticePoint3> vertices, ImmutableArray<int> triangles, ImmutableArray<FaceTag> tags)
    {
        if (triangles.Length % 3 != 0 || tags.Length != triangles.Length / 3)
        {
            throw new ArgumentException("A mesh needs three vertex numbers and one tag a triangle.");
        }

        foreach (int v in triangles)
        {
            if ((uint)v >= (uint)vertices.Length)
            {
                throw new ArgumentException($"Vertex number {v} is not one of {vertices.Length}.");
            }
        }

        Vertices = vertices;
        Triangles = triangles;
        Tags = tags;
    }

    /// <summary>The mesh without a triangle.</summary>
    public static Mesh Empty { get; } = new([], [], []);

    /// <summary>The corners.</summary>
    public ImmutableArray<LatticePoint3> Vertices { get; }

    /// <summary>Vertex numbers, three a triangle.</summary>
    public ImmutableArray<int> Triangles { get; }

    /// <summary>One tag a triangle.</summary>
    public ImmutableArray<FaceTag> Tags { get; }

    /// <summary>
    /// SHA-256 over corners, triangles and tags, 64 hexadecimal digits: what the mesh is known by. Worked out by whoever asks first.
    /// </summary>
    public string Digest => _digest ??= SolidDigest.Of(this);

    /// <summary>How many triangles there are.</summary>
    public int TriangleCount => Tags.Length;

    /// <summary>
    /// Meshes as one, for looking and measuring: in their order, nothing welded. Bodies that touch or overlap stay as they are.
    /// </summary>
    /// <param name="meshes">The meshes, where they lie.</param>
    public static Mesh Joined(IEnumerable<Mesh> meshes)
    {
        var vertices = ImmutableArray.CreateBuilder<LatticePoint3>();
        var triangles = ImmutableArray.CreateBuilder<int>();
        var tags = ImmutableArray.CreateBuilder<FaceTag>();
        foreach (Mesh mesh in meshes)
        {
            int first = vertices.Count;
            vertices.AddRange(mesh.Vertices);
            triangles.AddRange(mesh.Triangles.Select(vertex => vertex + first));
            tags.AddRange(mesh.Tags);
        }

        return new Mesh(vertices.ToImmutable(), triangles.ToImmutable(), tags.ToImmutable());
    }

    /// <summary>
    /// The mesh moved, turned or scaled, its vertices rounded to the lattice: for looking and measuring. Rounding may make neighbours touch
    /// by a step, so what is to be cut or written is mapped as a solid, before its evaluation.
    /// </summary>
    /// <param name="map">A map that keeps handedness.</param>
    /// <exception cref="ArgumentException">The map mirrors or flattens.</exception>
    public Mesh Mapped(Transform3 map) => map.Determinant > 0
        ? new([.. Vertices.Select(v => Lattice.ToLattice(map.Apply(v.ToMillimetres())))], Triangles, Tags)
        : throw new ArgumentException("A map that mirrors would turn the triangles inside out.", nameof(map));
}
