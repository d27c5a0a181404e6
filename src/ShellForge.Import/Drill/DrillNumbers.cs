
namespace ShellForge.Import.Drill;

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

        return raw.Shifted(LeadingKept ? raw.Count - IntegerDigits : DecimalDigits) * Unit;
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
        bool negative = false;
        if (at < text.Length && text[at] is '-' or '+')
        {
            negative = text[at] == '-';
            at++;
        }

        long digits = 0;
        int count = 0;
        int decimals = -1;
        while (at < text.Length && (char.IsAsciiDigit(text[at]) || (text[at] == '.' && decimals < 0)))
        {
            if (text[at] == '.')
            {
                decimals = 0;
            }
            else
            {
                if (++count > 15)
                {
                    return false;
                }

                digits = (digits * 10) + (text[at] - '0');
                decimals += decimals >= 0 ? 1 : 0;
            }

            at++;
        }

        if (count == 0)
        {
            return false;
        }

        number = new RawNumber(digits, (byte)count, (sbyte)decimals, negative);
        return true;
    }
}
