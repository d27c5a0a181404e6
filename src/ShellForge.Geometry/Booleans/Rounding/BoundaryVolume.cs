using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans.Rounding;

/// <summary>
/// What planar regions enclose, from their edges alone: however they are cut into triangles, it must be what these enclose. Source:
/// divergence theorem, with a region's vector area as the sum over its edges.
/// </summary>
/// <param name="Enclosed">Volume, mm3.</param>
/// <param name="Surface">Area of all faces, mm2.</param>
internal readonly record struct BoundaryVolume(double Enclosed, double Surface)
{
    /// <summary>What regions and triangles enclose together.</summary>
    /// <param name="vertices">Places, in lattice steps.</param>
    /// <param name="regions">Planar regions by their directed edges.</param>
    /// <param name="corners">Corners of triangles, three each.</param>
    public static BoundaryVolume Of(ReadOnlySpan<LatticePoint3> vertices, IEnumerable<PlanarRegion> regions, ReadOnlySpan<int> corners)
    {
        (double six, double doubled) = (0, 0);
        foreach (PlanarRegion region in regions.Where(region => region.Edges.Count > 0))
        {
            Point3 from = vertices[region.Edges[0].From].ToMillimetres();
            var twice = new Point3(0, 0, 0);
            foreach ((int a, int b) in region.Edges)
            {
                twice += Point3.Cross(vertices[a].ToMillimetres() - from, vertices[b].ToMillimetres() - from);
            }

            six += Point3.Dot(from, twice);
            doubled += twice.Length;
        }

        for (int i = 0; i < corners.Length; i += 3)
        {
            (Point3 a, Point3 b, Point3 c) = (vertices[corners[i]].ToMillimetres(), vertices[corners[i + 1]].ToMillimetres(),
                vertices[corners[i + 2]].ToMillimetres());
            var twice = Point3.Cross(b - a, c - a);
            six += Point3.Dot(a, twice);
            doubled += twice.Length;
        }

        return new BoundaryVolume(six / 6, doubled / 2);
    }

    /// <summary>Whether triangles enclose the same when each face has moved by so far at the most.</summary>
    /// <param name="vertices">Places, in lattice steps.</param>
    /// <param name="corners">Corners of the triangles, three each.</param>
    /// <param name="moved">How far, mm.</param>
    public bool IsThatOf(ReadOnlySpan<LatticePoint3> vertices, ReadOnlySpan<int> corners, double moved) =>
        Math.Abs(Of(vertices, [], corners).Enclosed - Enclosed) <= moved * Surface;
}
