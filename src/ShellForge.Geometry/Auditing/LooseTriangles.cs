using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Geometry.Auditing;

/// <summary>Triangles as a mesh file holds them: nine float32 a triangle, nothing shared, nothing promised.</summary>
public sealed class LooseTriangles
{
    /// <summary>Takes the coordinates: x, y, z of three corners a triangle, in mm or whatever unit the file has.</summary>
    /// <exception cref="ArgumentException">Not nine numbers a triangle.</exception>
    public LooseTriangles(ImmutableArray<float> coordinates)
    {
        if (coordinates.Length % 9 != 0)
        {
            throw new ArgumentException($"A triangle has 9 coordinates; {coordinates.Length} is no multiple of that.");
        }

        Coordinates = coordinates;
    }

    /// <summary>x, y, z of three corners a triangle.</summary>
    public ImmutableArray<float> Coordinates { get; }

    /// <summary>How many triangles there are.</summary>
    public int TriangleCount => Coordinates.Length / 9;

    /// <summary>The triangles of a mesh, exactly as its file will hold them.</summary>
    public static LooseTriangles Of(Mesh mesh)
    {
        var coordinates = ImmutableArray.CreateBuilder<float>(9 * mesh.TriangleCount);
        foreach (int v in mesh.Triangles)
        {
            Point3 p = mesh.Vertices[v].ToMillimetres();
            coordinates.AddRange((float)p.X, (float)p.Y, (float)p.Z);
        }

        return new LooseTriangles(coordinates.MoveToImmutable());
    }

    /// <summary>
    /// The welded mesh when every coordinate is a lattice value, in mm: what this program writes, and nothing is rounded. Null for
    /// others.
    /// </summary>
    public Mesh? ToLatticeMesh()
    {
        var number = new Dictionary<LatticePoint3, int>();
        var vertices = ImmutableArray.CreateBuilder<LatticePoint3>();
        var triangles = ImmutableArray.CreateBuilder<int>(3 * TriangleCount);
        for (int i = 0; i < Coordinates.Length; i += 3)
        {
            double x = Coordinates[i] * (double)Lattice.StepsPerMillimetre;
            double y = Coordinates[i + 1] * (double)Lattice.StepsPerMillimetre;
            double z = Coordinates[i + 2] * (double)Lattice.StepsPerMillimetre;
            if (!IsCount(x) || !IsCount(y) || !IsCount(z))
            {
                return null;
            }

            var p = new LatticePoint3((int)x, (int)y, (int)z);
            if (!number.TryGetValue(p, out int n))
            {
                n = vertices.Count;
                number.Add(p, n);
                vertices.Add(p);
            }

            triangles.Add(n);
        }

        return new Mesh(vertices.ToImmutable(), triangles.MoveToImmutable(), [.. new FaceTag[TriangleCount]]);
    }

    private static bool IsCount(double steps) => steps == Math.Floor(steps) && Math.Abs(steps) <= Lattice.Limit;
}
