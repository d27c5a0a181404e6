using System.Globalization;

namespace ShellForge.Board.Yaml.Vocabulary;

/// <summary>Numbers as text: decimal digits, a point, an exponent. No hexadecimal, no digit grouping, no NaN, no infinity.</summary>
internal static class NumberText
{
    /// <summary>The pattern of a length with its unit in a JSON Schema.</summary>
    public const string LengthPattern = @"^[+-]?([0-9]+(\.[0-9]*)?|\.[0-9]+)([eE][+-]?[0-9]+)? ?(mm|in|mil)$";

    private const double MillimetresPerInch = 25.4;

    /// <summary>Reads a finite number.</summary>
    public static bool TryNumber(string text, out double number)
    {
        number = 0;
        return HasShape(text)
            && double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out number)
            && double.IsFinite(number);
    }

    /// <summary>Reads a length in mm: a bare number is mm, "0.5 in" and "40 mil" carry their unit.</summary>
    public static bool TryLength(string text, out double millimetres)
    {
        (string unit, double factor) = text switch
        {
            _ when text.EndsWith("mm", StringComparison.Ordinal) => ("mm", 1.0),
            _ when text.EndsWith("mil", StringComparison.Ordinal) => ("mil", MillimetresPerInch / 1000),
            _ when text.EndsWith("in", StringComparison.Ordinal) => ("in", MillimetresPerInch),
            _ => ("", 1.0),
        };
        string bare = text[..^unit.Length];
        if (unit.Length > 0 && bare.EndsWith(' '))
        {
            bare = bare[..^1];
        }

        bool read = TryNumber(bare, out double number);
        millimetres = number * factor;
        return read && double.IsFinite(millimetres);
    }

    /// <summary>Whether a text is one of YAML's words for what is no number, or too large for one.</summary>
    public static bool IsNotANumber(string text) =>
        text.TrimStart('+', '-').ToLowerInvariant() is ".nan" or "nan" or ".inf" or "inf" or "infinity"
        || (HasShape(text) && !TryNumber(text, out _));

    /// <summary>Whether a text is a number with letters or quotes behind it that are no unit known here.</summary>
    public static bool HasOtherUnit(string text)
    {
        string bare = text.TrimEnd([.. "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZµ\"'"]).TrimEnd();
        return bare.Length < text.Length && HasShape(bare) && !TryLength(text, out _);
    }

    /// <summary>A number as people write it.</summary>
    public static string Written(double number) => number.ToString("0.######", CultureInfo.InvariantCulture);

    private static bool HasShape(string text)
    {
        int i = text.Length > 0 && text[0] is '+' or '-' ? 1 : 0;
        int whole = Digits(text, ref i);
        int fraction = 0;
        if (i < text.Length && text[i] == '.')
        {
            i++;
            fraction = Digits(text, ref i);
        }

        if (whole + fraction == 0)
        {
            return false;
        }

        if (i < text.Length && text[i] is 'e' or 'E')
        {
            i++;
            i += i < text.Length && text[i] is '+' or '-' ? 1 : 0;
            if (Digits(text, ref i) == 0)
            {
                return false;
            }
        }

        return i == text.Length;
    }

    private static int Digits(string text, ref int i)
    {
        int start = i;
        while (i < text.Length && char.IsAsciiDigit(text[i]))
        {
            i++;
        }

        return i - start;
    }
}
