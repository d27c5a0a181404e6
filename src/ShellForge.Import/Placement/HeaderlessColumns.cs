
namespace ShellForge.Import.Placement;

/// <summary>Tells columns without names by what is in them.</summary>
internal static class HeaderlessColumns
{
    private const double Most = 0.9;

    public static PlacementColumns? Of(List<List<string>> rows)
    {
        int width = rows.Max(r => r.Count);
        if (width is < 3 or > PlacementTable.MostCells)
        {
            return null;
        }

        double[] numeric = new double[width];
        double[] sides = new double[width];
        for (int c = 0; c < width; c++)
        {
            numeric[c] = rows.Count(r => c < r.Count && PlacementNumber.TryRead(r[c], out _, out _)) / (double)rows.Count;
            sides[c] = rows.Count(r => c < r.Count && PlacementPreamble.SideWord(r[c]) is not null) / (double)rows.Count;
        }

        int reference = Array.FindIndex(numeric, share => share < 1 - Most);
        int x = -1;
        for (int c = 0; c + 1 < width && x < 0; c++)
        {
            x = numeric[c] >= Most && numeric[c + 1] >= Most ? c : -1;
        }

        if (reference < 0 || x < 0 || reference > x || !ReferencesDiffer(rows, reference))
        {
            return null;
        }

        int rotation = x + 2 < width && numeric[x + 2] >= Most ? x + 2 : -1;
        int side = Array.FindIndex(sides, share => share >= Most);
        List<int> texts =
            [.. Enumerable.Range(0, width)
                .Where(c => c != reference && c != x && c != x + 1 && c != rotation && c != side && numeric[c] < Most)];

        // Of two text columns the package is the one with fewer different words: values vary, packages repeat.
        int package = texts.Count == 0 ? -1 : texts.Count == 1 ? texts[0] : texts[^1];
        int value = texts.Count < 2 ? -1 : texts[^2];
        return new PlacementColumns(reference, x, x + 1, rotation, side, -1, value, package, -1, null);
    }

    private static bool ReferencesDiffer(List<List<string>> rows, int column)
    {
        List<string> names = [.. rows.Where(r => column < r.Count && r[column].Length > 0).Select(r => r[column])];
        return names.Count >= rows.Count * Most && names.Distinct(StringComparer.Ordinal).Count() >= names.Count * Most;
    }
}
