using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Solids;

/// <summary>
/// A triangle mesh on the lattice: shared vertices, three vertex numbers a triangle, counter-clockwise seen from outside, and one
/// tag a triangle. A mesh may be anything; that it bounds a solid is the audit's word, carried by the type of an evaluated solid.
/// </summary>
public sealed class Mesh
{
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

    /// <summary>How many triangles there are.</summary>
    public int TriangleCount => Tags.Length;
}
