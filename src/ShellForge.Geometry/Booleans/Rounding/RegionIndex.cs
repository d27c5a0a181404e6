using ShellForge.Geometry.Booleans.Tables;

namespace ShellForge.Geometry.Booleans.Rounding;

/// <summary>Which regions have an edge, in either direction, and which have a vertex.</summary>
internal sealed class RegionIndex
{
    /// <summary>Regions of an edge by its <see cref="Key"/>.</summary>
    public Dictionary<long, List<int>> OfEdge { get; } = new(PairComparer.Instance);

    /// <summary>Regions of a vertex.</summary>
    public Dictionary<int, List<int>> OfVertex { get; } = [];

    /// <summary>The same for both directions of an edge.</summary>
    public static long Key(int p, int q) => ((long)Math.Min(p, q) << 32) | (uint)Math.Max(p, q);

    public void Add(PlanarRegion region, int number)
    {
        foreach ((int from, int to) in region.Edges)
        {
            Add(from, to, number);
        }

        foreach (int point in region.Loose)
        {
            AddVertex(point, number);
        }
    }

    public void Add(int from, int to, int region)
    {
        if (from == to)
        {
            AddVertex(from, region);
            return;
        }

        AddOnce(OfEdge, Key(from, to), region);
        AddVertex(from, region);
        AddVertex(to, region);
    }

    public void AddVertex(int vertex, int region) => AddOnce(OfVertex, vertex, region);

    private static void AddOnce<TKey>(Dictionary<TKey, List<int>> regionsOf, TKey key, int region)
        where TKey : notnull
    {
        if (!regionsOf.TryGetValue(key, out List<int>? regions))
        {
            regions = [];
            regionsOf.Add(key, regions);
        }

        if (!regions.Contains(region))
        {
            regions.Add(region);
        }
    }
}
