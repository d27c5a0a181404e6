namespace ShellForge.Geometry.Booleans.Rounding;

/// <summary>Two triangles over the same three vertices that face each other enclose nothing: both go, and the mesh stays closed.</summary>
internal static class CollapsedFilms
{
    /// <summary>Takes them out and says whether there were any.</summary>
    public static bool Remove(List<int> corners, List<int> tags, List<int> apart)
    {
        Dictionary<(int, int, int), int> seen = new(tags.Count);
        bool[] drop = new bool[tags.Count];
        bool any = false;
        for (int t = 0; t < tags.Count; t++)
        {
            int a = corners[3 * t], b = corners[(3 * t) + 1], c = corners[(3 * t) + 2];
            (int, int, int) key = a < b && a < c ? (a, b, c) : b < c ? (b, c, a) : (c, a, b);
            (int, int, int) opposite = (key.Item1, key.Item3, key.Item2);
            if (seen.Remove(opposite, out int other))
            {
                drop[t] = drop[other] = true;
                any = true;
            }
            else
            {
                seen.TryAdd(key, t);
            }
        }

        if (!any)
        {
            return false;
        }

        int kept = 0;
        for (int t = 0; t < drop.Length; t++)
        {
            if (!drop[t])
            {
                corners[3 * kept] = corners[3 * t];
                corners[(3 * kept) + 1] = corners[(3 * t) + 1];
                corners[(3 * kept) + 2] = corners[(3 * t) + 2];
                apart[kept] = apart[t];
                tags[kept++] = tags[t];
            }
        }

        corners.RemoveRange(3 * kept, corners.Count - (3 * kept));
        tags.RemoveRange(kept, tags.Count - kept);
        apart.RemoveRange(kept, apart.Count - kept);
        return true;
    }
}
