using ShellForge.Import.Files;

namespace ShellForge.Import.Placement;

/// <summary>How a table is cut and what its columns hold.</summary>
/// <param name="Separator">Character between cells; a blank for runs of blanks; 0 for fixed columns.</param>
/// <param name="Starts">Where fixed columns begin.</param>
/// <param name="Columns">What they hold.</param>
/// <param name="HeaderLine">Line of the names; 0 without.</param>
/// <param name="Score">How much of the following rows can be read this way.</param>
internal sealed record PlacementLayout(char Separator, IReadOnlyList<int> Starts, PlacementColumns Columns, int HeaderLine, double Score)
{
    private const int TriedRows = 60;

    // Most rows of a table without names must look the same before it is taken for one.
    private const double HeaderlessShare = 0.8;

    public List<string> Cells(ReadOnlySpan<char> line) => Separator switch
    {
        '\0' => PlacementTable.Fixed(line, Starts),
        ' ' => PlacementTable.BlankAligned(line, Spans),
        _ => PlacementTable.Separated(line, Separator),
    };

    /// <summary>Where the words of full rows stand, for rows with an empty cell; empty when there is no telling.</summary>
    public IReadOnlyList<(int Start, int End)> Spans { get; init; } = [];

    /// <summary>All ways in which a line can be the row of names, each with its score.</summary>
    public static IEnumerable<PlacementLayout> Of(SourceText source, int n)
    {
        string line = source.Line(n).ToString();
        string named = line.TrimStart('#', ' ', '*', ';').Length < line.Length ? Blanked(line) : line;
        foreach (char separator in new[] { ',', ';', '\t', '|' })
        {
            if (named.Contains(separator) && PlacementColumns.FromHeader(PlacementTable.Separated(named, separator)) is { } columns)
            {
                yield return Scored(source, new PlacementLayout(separator, [], columns, n, 0));
            }
        }

        List<(string Text, int Start)> words = PlacementTable.BlankWithStarts(named);
        if (PlacementColumns.FromHeader(words.ConvertAll(w => w.Text)) is { } blank)
        {
            yield return Scored(source, new PlacementLayout(' ', [], blank, n, 0) { Spans = PlacementSpans.Of(source, n, words.Count) });
            yield return Scored(source, new PlacementLayout('\0', words.ConvertAll(w => w.Start), blank, n, 0));
        }

        // Names of two words, "Center X", in columns two or more blanks apart.
        List<(string Text, int Start)> wide = Wide(named);
        if (wide.Count < words.Count && PlacementColumns.FromHeader(wide.ConvertAll(w => w.Text)) is { } spaced)
        {
            yield return Scored(source, new PlacementLayout('\0', wide.ConvertAll(w => w.Start), spaced, n, 0));
            yield return Scored(source, new PlacementLayout(' ', [], spaced, n, 0));
        }
    }

    /// <summary>A table without names: a reference, two neighbouring numbers, the rest by content.</summary>
    public static PlacementLayout? WithoutHeader(SourceText source)
    {
        PlacementLayout? best = null;
        foreach (char separator in new[] { '\t', ';', ',', '|', ' ' })
        {
            List<List<string>> rows = Sample(source, separator);
            if (rows.Count == 0 || HeaderlessColumns.Of(rows) is not { } columns)
            {
                continue;
            }

            PlacementLayout layout = Scored(source, new PlacementLayout(separator, [], columns, 0, 0));
            if (layout.Score >= HeaderlessShare && (best is null || layout.Score > best.Score))
            {
                best = layout;
            }
        }

        return best;
    }

    private static List<List<string>> Sample(SourceText source, char separator)
    {
        var rows = new List<List<string>>();
        for (int n = 1; n <= source.LineCount && rows.Count < TriedRows; n++)
        {
            ReadOnlySpan<char> line = source.Line(n);
            if (PlacementTable.IsContent(line) && !PlacementPreamble.IsComment(line))
            {
                rows.Add(separator == ' ' ? PlacementTable.Blank(line) : PlacementTable.Separated(line, separator));
            }
        }

        return rows;
    }

    private static PlacementLayout Scored(SourceText source, PlacementLayout layout)
    {
        int content = 0;
        int read = 0;
        double? unit = null;
        int sides = 0;
        for (int n = layout.HeaderLine + 1; n <= source.LineCount && content < TriedRows; n++)
        {
            ReadOnlySpan<char> line = source.Line(n);
            if (!PlacementTable.IsContent(line) || PlacementPreamble.IsComment(line))
            {
                continue;
            }

            content++;
            if (!layout.CutsBetweenWords(line))
            {
                continue;
            }

            PlacementRow? row = PlacementRows.Read(layout, line, n, ref unit);
            read += row is not null ? 1 : 0;
            sides += row?.Bottom is not null ? 1 : 0;
        }

        double share = content == 0 ? 0 : (double)read / content;
        double sideShare = layout.Columns.Side < 0 || content == 0 ? 0 : (double)sides / content;
        return layout with { Score = share + (0.2 * sideShare) + (0.001 * layout.Columns.Known) + (layout.Separator == ' ' ? -0.0005 : 0) };
    }

    // Numbers set flush right begin left of their column's name: such a table has no fixed columns by its names.
    private bool CutsBetweenWords(ReadOnlySpan<char> line)
    {
        foreach (int start in Separator == '\0' ? Starts : [])
        {
            if (start > 0 && start <= line.Length && !char.IsWhiteSpace(line[start - 1]))
            {
                return false;
            }
        }

        return true;
    }

    private static string Blanked(string line)
    {
        int at = 0;
        while (at < line.Length && line[at] is '#' or ' ' or '*' or ';')
        {
            at++;
        }

        return new string(' ', at) + line[at..];
    }

    private static List<(string Text, int Start)> Wide(string line)
    {
        var cells = new List<(string, int)>();
        int i = 0;
        while (i < line.Length && cells.Count < PlacementTable.MostCells)
        {
            if (char.IsWhiteSpace(line[i]))
            {
                i++;
                continue;
            }

            int start = i;
            while (i < line.Length && !(line[i] is '\t' || (line[i] == ' ' && i + 1 < line.Length && line[i + 1] == ' ')))
            {
                i++;
            }

            cells.Add((line[start..i].Trim(), start));
        }

        return cells;
    }
}
