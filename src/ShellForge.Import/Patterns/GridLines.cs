namespace ShellForge.Import.Patterns;

/// <summary>Coordinates that fall into lines with even steps between them.</summary>
/// <param name="Indices">The line of each coordinate, from 0 for the least.</param>
/// <param name="Count">Lines, empty ones among them.</param>
/// <param name="Step">From line to line; 0 for one line alone.</param>
internal readonly record struct GridLines(int[] Indices, int Count, double Step)
{
    // Lines are at least half a millimetre apart in a board file; what lies nearer is on one.
    private const double Apart = 0.25;

    /// <summary>The lines; null where the steps between them are not even, or are too many.</summary>
    /// <param name="coordinates">The coordinates.</param>
    /// <param name="most">The most lines.</param>
    public static GridLines? Of(double[] coordinates, int most)
    {
        int[] sorted = [.. Enumerable.Range(0, coordinates.Length).OrderBy(i => coordinates[i])];
        var lines = new List<List<int>>();
        for (int i = 0; i < sorted.Length; i++)
        {
            if (i == 0 || !(coordinates[sorted[i]] - coordinates[sorted[i - 1]] <= Apart))
            {
                lines.Add([]);
            }

            lines[^1].Add(sorted[i]);
        }

        double[] at = [.. lines.Select(line => line.Average(i => coordinates[i]))];
        double smallest = at.Zip(at.Skip(1), (a, b) => b - a).DefaultIfEmpty(0).Min();
        if (lines.Count > 1 && !(at[^1] - at[0] < most * smallest))
        {
            return null;
        }

        int[] indices = new int[coordinates.Length];
        int index = 0;
        for (int i = 0; i < lines.Count; i++)
        {
            index += i == 0 ? 0 : (int)Math.Round((at[i] - at[i - 1]) / smallest);
            lines[i].ForEach(member => indices[member] = index);
        }

        return index >= most ? null : new GridLines(indices, index + 1, index == 0 ? 0 : (at[^1] - at[0]) / index);
    }
}
