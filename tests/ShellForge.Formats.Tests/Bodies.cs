using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Formats.Tests;

/// <summary>Small meshes written down by hand.</summary>
internal static class Bodies
{
    /// <summary>The tetrahedron between the origin and the three unit points, its corners given in mm times a size.</summary>
    public static Mesh Tetrahedron(double size = 1, double shift = 0)
    {
        LatticePoint3[] corners =
        [
            Lattice.ToLattice(new Point3(shift, shift, shift)),
            Lattice.ToLattice(new Point3(shift + size, shift, shift)),
            Lattice.ToLattice(new Point3(shift, shift + size, shift)),
            Lattice.ToLattice(new Point3(shift, shift, shift + size)),
        ];
        return new Mesh([.. corners], [0, 2, 1, 0, 1, 3, 0, 3, 2, 1, 2, 3], [default, default, default, default]);
    }

    /// <summary>The same mesh with its triangles and vertices listed in another order.</summary>
    public static Mesh Shuffled(Mesh mesh, int seed)
    {
        var random = new Random(seed);
        int[] order = [.. Enumerable.Range(0, mesh.Vertices.Length)];
        random.Shuffle(order);
        int[] triangles = [.. Enumerable.Range(0, mesh.TriangleCount)];
        random.Shuffle(triangles);
        var listed = ImmutableArray.CreateBuilder<int>();
        foreach (int t in triangles)
        {
            int start = random.Next(3);
            for (int i = 0; i < 3; i++)
            {
                listed.Add(Array.IndexOf(order, mesh.Triangles[(3 * t) + ((start + i) % 3)]));
            }
        }

        return new Mesh([.. order.Select(v => mesh.Vertices[v])], listed.ToImmutable(), [.. triangles.Select(t => mesh.Tags[t])]);
    }

    /// <summary>A mesh with random lattice corners anywhere in the domain; not a solid.</summary>
    public static Mesh Random(int seed, int triangles)
    {
        var random = new Random(seed);
        var vertices = ImmutableArray.CreateBuilder<LatticePoint3>();
        for (int i = 0; i < 3 * triangles; i++)
        {
            vertices.Add(new LatticePoint3(Coordinate(random), Coordinate(random), Coordinate(random)));
        }

        return new Mesh(
            vertices.ToImmutable(), [.. Enumerable.Range(0, 3 * triangles)], [.. Enumerable.Repeat(default(FaceTag), triangles)]);
    }

    // The ends of the domain, zero and its neighbours are where encodings break.
    private static int Coordinate(Random random) => random.Next(6) switch
    {
        0 => Lattice.Limit,
        1 => -Lattice.Limit,
        2 => random.Next(-1, 2),
        3 => Lattice.Limit - 1,
        _ => random.Next(-Lattice.Limit, Lattice.Limit + 1),
    };
}
