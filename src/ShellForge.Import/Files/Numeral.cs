using System.Globalization;

namespace ShellForge.Import.Files;

/// <summary>Numbers as hand-over files write them. Never infinite, never not-a-number, never beyond what a board can hold.</summary>
internal static class Numeral
{
    private const double Largest = 1e12;

    /// <summary>A plain decimal number, with an exponent if any; false for anything else, also for NaN and infinity.</summary>
    public static bool TryParse(ReadOnlySpan<char> text, out double value)
    {
        text = text.Trim();
        value = 0;
        if (text.IsEmpty || text.Length > 64)
        {
            return false;
        }

        bool digit = false;
        foreach (char c in text)
        {
            digit |= char.IsAsciiDigit(c);
            if (!char.IsAsciiDigit(c) && c is not ('.' or '-' or '+' or 'e' or 'E'))
            {
                return false;
            }
        }

        // What is refused leaves 0: a reader that goes on without it must not go on with an infinity.
        if (digit && double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double parsed)
            && Math.Abs(parsed) <= Largest)
        {
            value = parsed;
            return true;
        }

        return false;
    }

    /// <summary>A whole number that fits an int.</summary>
    public static bool TryParseInt(ReadOnlySpan<char> text, out int value) =>
        int.TryParse(text.Trim(), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out value);

    /// <summary>A length as people write it: no trailing zeros, at most so many decimals, no negative zero.</summary>
    public static string Text(double value, int decimals = 3)
    {
        double rounded = Math.Round(value, decimals, MidpointRounding.AwayFromZero);
        return (rounded == 0 ? 0 : rounded).ToString("0.######", CultureInfo.InvariantCulture);
    }
}
