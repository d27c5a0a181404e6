using ShellForge.Import.Files;

namespace ShellForge.Import.Placement;

/// <summary>Numbers as lists write them: with a unit glued on, a decimal comma, thousands marks.</summary>
internal static class PlacementNumber
{
    /// <summary>The value, and the unit where the cell carries one (then the value is in mm already).</summary>
    public static bool TryRead(string cell, out double value, out double? unit)
    {
        unit = null;
        ReadOnlySpan<char> text = cell.AsSpan().Trim();
        int end = text.Length;
        while (end > 0 && (char.IsAsciiLetter(text[end - 1]) || text[end - 1] is '"' or ' ' or '\u00b5' or '\u00b0'))
        {
            end--;
        }

        ReadOnlySpan<char> suffix = text[end..].Trim().TrimEnd('\u00b0');
        text = text[..end];
        value = 0;
        if (!suffix.IsEmpty && !suffix.Equals("deg", StringComparison.OrdinalIgnoreCase))
        {
            unit = PlacementColumns.UnitWord(suffix);
            if (unit is null)
            {
                return false;
            }
        }

        if (!TryPlain(text, out value))
        {
            return false;
        }

        value *= unit ?? 1;
        return Math.Abs(value) <= EcadTolerances.LargestCoordinate;
    }

    private static bool TryPlain(ReadOnlySpan<char> text, out double value)
    {
        int comma = text.LastIndexOf(',');
        int point = text.LastIndexOf('.');
        if (comma < 0)
        {
            return Numeral.TryParse(text, out value);
        }

        // The last mark is the decimal one; the other kind groups thousands.
        Span<char> plain = stackalloc char[Math.Min(text.Length, 64)];
        int length = 0;
        foreach (char c in text)
        {
            if (length >= plain.Length)
            {
                break;
            }

            if (c == ',' && comma > point)
            {
                plain[length++] = '.';
            }
            else if (c is not (',' or '.') || (c == '.' && point > comma))
            {
                plain[length++] = c;
            }
        }

        return Numeral.TryParse(plain[..length], out value);
    }
}
