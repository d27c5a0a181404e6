using ShellForge.Import.Files;

namespace ShellForge.Import.Placement;

/// <summary>Where the columns of a table set with blanks stand, seen from its full rows.</summary>
internal static class PlacementSpans
{
    private const int LookedAt = 200;

    /// <summary>First and last place of each column over all rows with so many words; none when no row is full.</summary>
    public static IReadOnlyList<(int Start, int End)> Of(SourceText source, int headerLine, int columns)
    {
        (int Start, int End)[]? spans = null;
        for (int n = headerLine + 1; n <= Math.Min(source.LineCount, headerLine + LookedAt); n++)
        {
            ReadOnlySpan<char> line = source.Line(n);
            if (!PlacementTable.IsContent(line) || PlacementPreamble.IsComment(line))
            {
                continue;
            }

            List<(string Text, int Start)> words = PlacementTable.BlankWithStarts(line);
            if (words.Count != columns)
            {
                continue;
            }

            spans ??= [.. words.Select(w => (w.Start, w.Start + w.Text.Length))];
            for (int c = 0; c < columns; c++)
            {
                spans[c] = (Math.Min(spans[c].Start, words[c].Start), Math.Max(spans[c].End, words[c].Start + words[c].Text.Length));
            }
        }

        return spans ?? [];
    }
}
