using ShellForge.Import.Files;

namespace ShellForge.Import.Placement;

/// <summary>What the lines round a table say: the unit, the side, and which lines are remarks.</summary>
internal static class PlacementPreamble
{
    /// <summary>A unit named in a line that speaks of units, before or beside the table.</summary>
    public static double? Unit(SourceText source, int lines, out bool? bottom)
    {
        bottom = null;
        double? unit = null;
        for (int n = 1; n <= Math.Min(source.LineCount, lines); n++)
        {
            ReadOnlySpan<char> line = source.Line(n);
            if (line.Length > 500)
            {
                continue;
            }

            string text = line.ToString();
            int at = text.IndexOf("unit", StringComparison.OrdinalIgnoreCase);
            if (unit is null && at >= 0)
            {
                foreach (string word in text[at..].Split([' ', ':', '=', ',', ';', '\t', '(', ')', '"'],
                    StringSplitOptions.RemoveEmptyEntries))
                {
                    unit ??= PlacementColumns.UnitWord(word);
                }
            }

            at = text.IndexOf("side", StringComparison.OrdinalIgnoreCase);
            if (bottom is null && IsComment(line) && at >= 0)
            {
                string rest = text[(at + 4)..].Trim(' ', ':', '=').ToUpperInvariant();
                bottom = rest is "TOP" or "FRONT" ? false : rest is "BOTTOM" or "BACK" ? true : null;
            }
        }

        return unit;
    }

    /// <summary>Some exporters write the side nowhere but in the file's name.</summary>
    public static bool? SideFromName(string file)
    {
        string name = Path.GetFileNameWithoutExtension(file).ToUpperInvariant();
        bool bottom = name.Contains("BOT", StringComparison.Ordinal) || name.Contains("BACK", StringComparison.Ordinal)
            || name.Contains("SOLDER", StringComparison.Ordinal);
        bool top = name.Contains("TOP", StringComparison.Ordinal) || name.Contains("FRONT", StringComparison.Ordinal);
        return bottom == top ? null : bottom;
    }

    /// <summary>A remark: number sign, semicolon or two slashes in front, and more than one word after it.</summary>
    public static bool IsComment(ReadOnlySpan<char> line)
    {
        ReadOnlySpan<char> text = line.TrimStart();
        return text.StartsWith("#") || text.StartsWith(";") || text.StartsWith("//");
    }

    /// <summary>Top or bottom as lists say it; null for any other word.</summary>
    public static bool? SideWord(string cell)
    {
        string word = string.Concat(cell.ToUpperInvariant().Where(char.IsLetterOrDigit));
        return word switch
        {
            "T" or "TOP" or "F" or "FRONT" or "TOPLAYER" or "TOPSIDE" or "FCU" or "COMPONENTSIDE" or "COMP" or "PRIMARY" or "LAYERTOP"
                or "FRONTSIDE" or "TOPCOPPER" => false,
            "B" or "BOT" or "BOTTOM" or "BACK" or "BOTTOMLAYER" or "BOTTOMSIDE" or "BCU" or "SOLDERSIDE" or "SOLDER" or "SECONDARY"
                or "LAYERBOTTOM" or "BACKSIDE" or "BOTTOMCOPPER" => true,
            _ => null,
        };
    }
}
