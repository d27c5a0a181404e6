using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Formats.Step;

/// <summary>
/// Coplanar neighbours of a mesh, joined. Corners were rounded to the lattice, so faces that were made flat are so to a few steps only.
/// </summary>
internal static class CoplanarFaces
{
    /// <summary>The number of the facet that each triangle belongs to; facets are connected.</summary>
    public static int[] Of(HalfEdges edges)
    {
        Mesh mesh = edges.Mesh;
        int[] facets = new int[mesh.TriangleCount];
        Array.Fill(facets, -1);
        Point3[] normals = [.. Enumerable.Range(0, mesh.TriangleCount).Select(t => Normal(edges, t))];
        int count = 0;
        var waiting = new Stack<int>();

        // The largest first: their planes are known best, and slivers between them go to one of them.
        foreach (int seed in Enumerable.Range(0, mesh.TriangleCount).OrderByDescending(t => normals[t].Length))
        {
            if (facets[seed] >= 0)
            {
                continue;
            }

            Point3 normal = 1 / normals[seed].Length * normals[seed];
            Point3 origin = edges.Start(3 * seed);
            facets[seed] = count;
            waiting.Push(seed);
            while (waiting.TryPop(out int triangle))
            {
                for (int e = 3 * triangle; e < (3 * triangle) + 3; e++)
                {
                    int other = HalfEdges.TriangleOf(edges.Twin(e));
                    if (facets[other] < 0 && (Point3.Dot(normals[other], normal) > 0 || IsSliver(edges, other, normals[other]))
                        && IsInPlane(edges, other, origin, normal))
                    {
                        facets[other] = count;
                        waiting.Push(other);
                    }
                }
            }

            count++;
        }

        return facets;
    }

    /// <summary>Twice the area of each facet as a vector along its outward normal, in lattice steps.</summary>
    public static ImmutableArray<Point3> Normals(HalfEdges edges, int[] facets)
    {
        var sums = new Point3[facets.Length == 0 ? 0 : facets.Max() + 1];
        for (int t = 0; t < facets.Length; t++)
        {
            sums[facets[t]] += Normal(edges, t);
        }

        return [.. sums];
    }

    private static Point3 Normal(HalfEdges edges, int t) =>
        Point3.Cross(edges.Start((3 * t) + 1) - edges.Start(3 * t), edges.Start((3 * t) + 2) - edges.Start(3 * t));

    // Thinner than the rounding of its corners: its normal means nothing, and no CAD program could make a face of it.
    private static bool IsSliver(HalfEdges edges, int t, Point3 normal)
    {
        double longest = Enumerable.Range(3 * t, 3).Max(e => Point3.Distance(edges.At(edges.From(e)), edges.At(edges.To(e))));
        return normal.Length <= 2 * Tolerances.FlatnessSteps * longest;
    }

    private static bool IsInPlane(HalfEdges edges, int t, Point3 origin, Point3 normal) =>
        Enumerable.Range(3 * t, 3).All(e => Math.Abs(Point3.Dot(edges.Start(e) - origin, normal)) <= Tolerances.FlatnessSteps);
}
