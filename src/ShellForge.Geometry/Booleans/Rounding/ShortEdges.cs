using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans.Rounding;

/// <summary>
/// Tidying between rounding and triangulating: where two corners of the result have come to lie within two steps of each other, as beside a
/// body that grazes a corner, the edge between them goes, and with it the needles on both of its sides.
/// </summary>
internal static class ShortEdges
{
    // Squared, in steps: a triangle on a shorter edge has an altitude under two.
    private const long Short = 4;

    // Squared, in steps: where an end has a second edge below this, the body itself is as small as that.
    private const long Small = 64 * 64;

    /// <summary>Draws the ends of short edges together in all regions and says how many.</summary>
    /// <param name="regions">Regions on rounded vertices.</param>
    /// <param name="vertices">Their places.</param>
    /// <param name="isHeld">Whether a vertex belongs to untouched triangles and must stay.</param>
    public static int Collapse(List<PlanarRegion> regions, List<LatticePoint3> vertices, Func<int, bool> isHeld)
    {
        HashSet<(int, int)> small = [];
        Dictionary<int, int> smallAt = [];
        List<(int From, int To)> edges = [];
        foreach (PlanarRegion region in regions)
        {
            foreach ((int from, int to) in region.Edges)
            {
                if (from != to && Squared(vertices[from], vertices[to]) < Small && small.Add((Math.Min(from, to), Math.Max(from, to))))
                {
                    edges.Add((from, to));
                    smallAt[from] = smallAt.GetValueOrDefault(from) + 1;
                    smallAt[to] = smallAt.GetValueOrDefault(to) + 1;
                }
            }
        }

        Dictionary<int, int> goesTo = [];
        foreach ((int from, int to) in edges)
        {
            if (Squared(vertices[from], vertices[to]) < Short && smallAt[from] == 1 && smallAt[to] == 1)
            {
                (int keep, int drop) = isHeld(to) ? (to, from) : (from, to);
                if (!isHeld(drop))
                {
                    goesTo.Add(drop, keep);
                }
            }
        }

        if (goesTo.Count > 0)
        {
            foreach (PlanarRegion region in regions)
            {
                Redraw(region, goesTo);
            }
        }

        return goesTo.Count;
    }

    private static void Redraw(PlanarRegion region, Dictionary<int, int> goesTo)
    {
        int kept = 0;
        for (int i = 0; i < region.Edges.Count; i++)
        {
            (int from, int to) = region.Edges[i];
            (from, to) = (goesTo.GetValueOrDefault(from, from), goesTo.GetValueOrDefault(to, to));
            if (from != to)
            {
                region.Edges[kept++] = (from, to);
            }
        }

        region.Edges.RemoveRange(kept, region.Edges.Count - kept);
        for (int i = 0; i < region.Loose.Count; i++)
        {
            region.Loose[i] = goesTo.GetValueOrDefault(region.Loose[i], region.Loose[i]);
        }
    }

    private static long Squared(LatticePoint3 a, LatticePoint3 b)
    {
        long x = a.X - b.X, y = a.Y - b.Y, z = a.Z - b.Z;
        return (x * x) + (y * y) + (z * z);
    }
}
