using ShellForge.Board.Ecad.Files;

namespace ShellForge.Board.Ecad.Drill;

/// <summary>One way to read the numbers of a drill file.</summary>
internal readonly record struct DrillReading(double Unit, int IntegerDigits, int DecimalDigits, bool LeadingKept)
{
    /// <summary>The value of a number in mm. A decimal point settles it; otherwise digits are counted from the kept side.</summary>
    public double Millimetres(RawNumber raw)
    {
        if (raw.HasPoint)
        {
            return raw.Value * Unit;
        }

        int decimals = LeadingKept ? raw.Count - IntegerDigits : DecimalDigits;
        double value = raw.Digits;
        for (int i = 0; i < decimals; i++)
        {
            value /= 10;
        }

        for (int i = 0; i > decimals; i--)
        {
            value *= 10;
        }

        return (raw.Negative ? -value : value) * Unit;
    }

    /// <summary>The reading in words.</summary>
    public string InWords() =>
        $"{(Unit == 1 ? "mm" : "inch")} {IntegerDigits}:{DecimalDigits}, {(LeadingKept ? "leading" : "trailing")} zeros kept";
}

/// <summary>Scans numbers without allocating.</summary>
internal static class DrillNumbers
{
    /// <summary>Reads a number at a position and moves past it; false when there is none or it is too long.</summary>
    public static bool TryScan(ReadOnlySpan<char> text, ref int at, out RawNumber number)
    {
        number = default;
        int start = at;
        bool negative = false;
        if (at < text.Length && text[at] is '-' or '+')
        {
            negative = text[at] == '-';
            at++;
        }

        long digits = 0;
        int count = 0;
        bool point = false;
        while (at < text.Length && (char.IsAsciiDigit(text[at]) || (text[at] == '.' && !point)))
        {
            if (text[at] == '.')
            {
                point = true;
            }
            else
            {
                if (++count > 15)
                {
                    return false;
                }

                digits = (digits * 10) + (text[at] - '0');
            }

            at++;
        }

        if (count == 0)
        {
            return false;
        }

        double value = 0;
        if (point && !Numeral.TryParse(text[start..at], out value))
        {
            return false;
        }

        number = new RawNumber(digits, (byte)count, negative, point, value);
        return true;
    }
}
