using System.Buffers;
using System.Text;
using ShellForge.Import.Files;

namespace ShellForge.Import.Placement;

/// <summary>Cuts the lines of a list into cells: by a separator, with or without quotes, or by blanks.</summary>
internal static class PlacementTable
{
    /// <summary>More columns than any list has.</summary>
    public const int MostCells = 64;

    private static readonly SearchValues<char> RulerCharacters = SearchValues.Create("=-_+|*# \t");

    /// <summary>Cells between separators; quotes hold separators and double up for a quote.</summary>
    public static List<string> Separated(ReadOnlySpan<char> line, char separator)
    {
        var cells = new List<string>();
        var cell = new StringBuilder();
        bool quoted = false;
        for (int i = 0; i < line.Length && cells.Count < MostCells; i++)
        {
            char c = line[i];
            if (quoted)
            {
                if (c == '"' && i + 1 < line.Length && line[i + 1] == '"')
                {
                    cell.Append('"');
                    i++;
                }
                else if (c == '"')
                {
                    quoted = false;
                }
                else
                {
                    cell.Append(c);
                }
            }
            else if (c == '"' && cell.ToString().AsSpan().Trim().IsEmpty)
            {
                cell.Clear();
                quoted = true;
            }
            else if (c == separator)
            {
                cells.Add(cell.ToString().Trim());
                cell.Clear();
            }
            else
            {
                cell.Append(c);
            }
        }

        cells.Add(cell.ToString().Trim());
        return cells;
    }

    /// <summary>Cells between blanks; quotes hold blanks.</summary>
    public static List<string> Blank(ReadOnlySpan<char> line) => BlankWithStarts(line).ConvertAll(c => c.Text);

    /// <summary>Cells between blanks; where a row has fewer than others, each goes to the column it stands under.</summary>
    public static List<string> BlankAligned(ReadOnlySpan<char> line, IReadOnlyList<(int Start, int End)> spans)
    {
        List<(string Text, int Start)> words = BlankWithStarts(line);
        if (words.Count >= spans.Count)
        {
            return words.ConvertAll(w => w.Text);
        }

        var cells = new List<string>(Enumerable.Repeat("", spans.Count));
        int from = 0;
        foreach ((string text, int start) in words)
        {
            int best = -1;
            int bestOverlap = int.MinValue;
            for (int c = from; c < spans.Count; c++)
            {
                int overlap = Math.Min(start + text.Length, spans[c].End) - Math.Max(start, spans[c].Start);
                if (overlap > bestOverlap)
                {
                    (best, bestOverlap) = (c, overlap);
                }
            }

            if (best < 0)
            {
                break;
            }

            cells[best] = text;
            from = best + 1;
        }

        return cells;
    }

    /// <summary>Cells between blanks with the column each begins at.</summary>
    public static List<(string Text, int Start)> BlankWithStarts(ReadOnlySpan<char> line)
    {
        var cells = new List<(string, int)>();
        int i = 0;
        while (i < line.Length && cells.Count < MostCells)
        {
            if (char.IsWhiteSpace(line[i]))
            {
                i++;
                continue;
            }

            int start = i;
            if (line[i] == '"')
            {
                int close = line[(i + 1)..].IndexOf('"');
                i = close < 0 ? line.Length : i + close + 2;
                cells.Add((line[start..i].Trim('"').ToString(), start));
                continue;
            }

            while (i < line.Length && !char.IsWhiteSpace(line[i]))
            {
                i++;
            }

            cells.Add((line[start..i].ToString(), start));
        }

        return cells;
    }

    /// <summary>Cells cut at fixed columns.</summary>
    public static List<string> Fixed(ReadOnlySpan<char> line, IReadOnlyList<int> starts)
    {
        var cells = new List<string>(starts.Count);
        for (int c = 0; c < starts.Count; c++)
        {
            int from = Math.Min(starts[c], line.Length);
            int to = c + 1 < starts.Count ? Math.Min(starts[c + 1], line.Length) : line.Length;
            cells.Add(line[from..to].Trim().Trim('"').ToString());
        }

        return cells;
    }

    /// <summary>Lines worth reading: not empty, not a ruler, not overlong.</summary>
    public static bool IsContent(ReadOnlySpan<char> line)
    {
        ReadOnlySpan<char> trimmed = line.Trim();
        return !trimmed.IsEmpty && trimmed.Length <= EcadLimits.LineCharacters && trimmed.IndexOfAnyExcept(RulerCharacters) >= 0;
    }
}
