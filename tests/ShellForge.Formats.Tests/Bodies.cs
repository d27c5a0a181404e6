using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Testing;

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
    public static Mesh Shuffled(Mesh mesh, Draws draws)
    {
        int[] order = draws.Shuffled(Enumerable.Range(0, mesh.Vertices.Length));
        int[] triangles = draws.Shuffled(Enumerable.Range(0, mesh.TriangleCount));
        var listed = ImmutableArray.CreateBuilder<int>();
        foreach (int t in triangles)
        {
            int start = draws.Next(3);
            for (int i = 0; i < 3; i++)
            {
                listed.Add(Array.IndexOf(order, mesh.Triangles[(3 * t) + ((start + i) % 3)]));
            }
        }

        return new Mesh([.. order.Select(v => mesh.Vertices[v])], listed.ToImmutable(), [.. triangles.Select(t => mesh.Tags[t])]);
    }

    /// <summary>A mesh with drawn lattice corners anywhere in the domain; not a solid.</summary>
    public static Mesh Drawn(Draws draws, int triangles)
    {
        var vertices = ImmutableArray.CreateBuilder<LatticePoint3>();
        for (int i = 0; i < 3 * triangles; i++)
        {
            vertices.Add(new LatticePoint3(Coordinate(draws), Coordinate(draws), Coordinate(draws)));
        }

        return new Mesh(
            vertices.ToImmutable(), [.. Enumerable.Range(0, 3 * triangles)], [.. Enumerable.Repeat(default(FaceTag), triangles)]);
    }

    // The ends of the domain, zero and its neighbours are where encodings break.
    private static int Coordinate(Draws draws) => draws.Next(6) switch
    {
        0 => Lattice.Limit,
        1 => -Lattice.Limit,
        2 => draws.About(1),
        3 => Lattice.Limit - 1,
        _ => draws.About(Lattice.Limit),
    };
}
