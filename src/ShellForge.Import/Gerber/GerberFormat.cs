using ShellForge.Import.Files;

namespace ShellForge.Import.Gerber;

/// <summary>How coordinates are written: digits before and after the point, which zeros are left out, and the unit.</summary>
internal sealed class GerberFormat
{
    public bool Stated { get; private set; }

    public int IntegerDigits { get; private set; } = 2;

    public int DecimalDigits { get; private set; } = 4;

    /// <summary>Trailing zeros left out: the digits count from the left.</summary>
    public bool TrailingOmitted { get; private set; }

    public bool Incremental { get; set; }

    /// <summary>Millimetres per unit; null until stated.</summary>
    public double? Unit { get; set; }

    public bool Read(ReadOnlySpan<char> fs)
    {
        // FS, then L, T or D, then A or I, then X with two digits.
        int x = fs.IndexOf('X');
        if (x < 0 || x + 2 >= fs.Length || !char.IsAsciiDigit(fs[x + 1]) || !char.IsAsciiDigit(fs[x + 2]))
        {
            return false;
        }

        ReadOnlySpan<char> modes = fs[..x];
        TrailingOmitted = modes.Contains('T');
        Incremental = modes.Contains('I');
        IntegerDigits = fs[x + 1] - '0';
        DecimalDigits = fs[x + 2] - '0';
        Stated = true;
        return true;
    }

    /// <summary>A coordinate in file units.</summary>
    public bool TryCoordinate(ReadOnlySpan<char> digits, out double value)
    {
        value = 0;
        if (digits.IsEmpty || digits.Length > 18)
        {
            return false;
        }

        if (digits.Contains('.'))
        {
            return Numeral.TryParse(digits, out value);
        }

        bool negative = digits[0] == '-';
        ReadOnlySpan<char> bare = digits[0] is '-' or '+' ? digits[1..] : digits;
        if (bare.IsEmpty || bare.Length > 15)
        {
            return false;
        }

        long number = 0;
        foreach (char c in bare)
        {
            if (!char.IsAsciiDigit(c))
            {
                return false;
            }

            number = (10 * number) + (c - '0');
        }

        // With trailing zeros left out, 04 in 3:3 is 040.000: fewer digits than the integer part has are tens.
        int decimals = TrailingOmitted ? bare.Length - IntegerDigits : DecimalDigits;
        value = decimals >= 0 ? number / PowerOfTen(decimals) : number * PowerOfTen(-decimals);
        value = negative ? -value : value;
        return true;
    }

    private static double PowerOfTen(int n)
    {
        double power = 1;
        for (int i = 0; i < n; i++)
        {
            power *= 10;
        }

        return power;
    }
}
