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

    /// <summary>Several meshes in one, without regard to what they do to each other.</summary>
    public static Mesh Together(params IReadOnlyList<Mesh> meshes)
    {
        var vertices = ImmutableArray.CreateBuilder<LatticePoint3>();
        var triangles = ImmutableArray.CreateBuilder<int>();
        var tags = ImmutableArray.CreateBuilder<FaceTag>();
        foreach (Mesh mesh in meshes)
        {
            int first = vertices.Count;
            vertices.AddRange(mesh.Vertices);
            triangles.AddRange(mesh.Triangles.Select(v => v + first));
            tags.AddRange(mesh.Tags);
        }

        return new Mesh(vertices.ToImmutable(), triangles.ToImmutable(), tags.ToImmutable());
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
