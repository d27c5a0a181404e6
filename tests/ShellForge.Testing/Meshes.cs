using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Testing;

/// <summary>Meshes for tests, made without the boolean kernel.</summary>
public static class Meshes
{
    /// <summary>A primitive, optionally mapped, put on the lattice corner by corner.</summary>
    public static Mesh Of(Solid primitive)
    {
        Transform3 map = Transform3.Identity;
        while (primitive is MovedSolid moved)
        {
            map = moved.Map.Then(map);
            primitive = moved.Operand;
        }

        var source = (SourceSolid)primitive;
        ImmutableArray<int> triangles = source.Triangles;
        if (map.Determinant < 0)
        {
            triangles = [.. triangles.Chunk(3).SelectMany(t => new[] { t[0], t[2], t[1] })];
        }

        return new Mesh(
            [.. source.Vertices.Select(v => Lattice.ToLattice(map.Apply(v)))], triangles, [.. new FaceTag[triangles.Length / 3]]);
    }

    /// <summary>The same surface turned inside out.</summary>
    public static Mesh Inverted(Mesh mesh) =>
        new(mesh.Vertices, [.. mesh.Triangles.Chunk(3).SelectMany(t => new[] { t[0], t[2], t[1] })], mesh.Tags);

    /// <summary>The mesh with its triangles in the given order.</summary>
    public static Mesh Reordered(Mesh mesh, IReadOnlyList<int> order) => new(
        mesh.Vertices,
        [.. order.SelectMany(t => new[] { mesh.Triangles[3 * t], mesh.Triangles[(3 * t) + 1], mesh.Triangles[(3 * t) + 2] })],
        [.. order.Select(t => mesh.Tags[t])]);

    /// <summary>The mesh moved by whole lattice steps.</summary>
    public static Mesh Shifted(Mesh mesh, int x, int y, int z) =>
        new([.. mesh.Vertices.Select(v => new LatticePoint3(v.X + x, v.Y + y, v.Z + z))], mesh.Triangles, mesh.Tags);
}
