using ShellForge.Import.Files;

namespace ShellForge.Import.Drill;

/// <summary>Collects what header lines and comments say about unit, digits, zeros and plating.</summary>
internal sealed class DrillHeader
{
    private string _from = "";

    public double? Unit { get; private set; }

    /// <summary>Header and a later M71 or M72 name different units: only evidence can tell.</summary>
    public bool UnitsDisagree { get; private set; }

    public DrillZeros Zeros { get; private set; }

    public int? IntegerDigits { get; private set; }

    public int? DecimalDigits { get; private set; }

    /// <summary>Plating of the tools that follow, from a type comment.</summary>
    public Plating Current { get; private set; }

    /// <summary>Plating of the whole file.</summary>
    public Plating File { get; private set; }

    /// <summary>Use of the tools that follow: via, component or mechanical drill.</summary>
    public string Use { get; private set; } = "";

    /// <summary>Tool number from which on plating changes, where a comment says so.</summary>
    public List<(int Tool, Plating Plating)> FromTool { get; } = [];

    public DrillStatedFormat Stated => new(UnitsDisagree ? null : Unit, Zeros, IntegerDigits, DecimalDigits, _from);

    /// <summary>METRIC or INCH with its arguments, M71 or M72; true when it was one.</summary>
    public bool UnitLine(ReadOnlySpan<char> line)
    {
        double? unit = line.StartsWith("METRIC", StringComparison.OrdinalIgnoreCase) || line.StartsWith("M71", StringComparison.Ordinal) ? 1
            : line.StartsWith("INCH", StringComparison.OrdinalIgnoreCase) || line.StartsWith("M72", StringComparison.Ordinal) ? 25.4
            : null;
        if (unit is null)
        {
            return false;
        }

        UnitsDisagree |= Unit is { } stated && stated != unit;
        Unit ??= unit;
        _from = _from.Length == 0 ? "header" : _from;
        if (line.Contains(",LZ", StringComparison.OrdinalIgnoreCase))
        {
            Zeros = DrillZeros.LeadingKept;
        }
        else if (line.Contains(",TZ", StringComparison.OrdinalIgnoreCase))
        {
            Zeros = DrillZeros.TrailingKept;
        }

        // METRIC,TZ,000.000 spells the digits out.
        int point = line.IndexOf('.');
        if (point > 0)
        {
            int before = 0;
            while (point - before > 0 && line[point - before - 1] == '0')
            {
                before++;
            }

            int after = 0;
            while (point + after + 1 < line.Length && line[point + after + 1] == '0')
            {
                after++;
            }

            if (before > 0 && after > 0)
            {
                (IntegerDigits, DecimalDigits) = (before, after);
            }
        }

        return true;
    }

    public void Comment(ReadOnlySpan<char> comment)
    {
        string text = comment.ToString().ToUpperInvariant();
        TakePlating(text);
        TakeUse(text);
        if (text.Contains("FORMAT", StringComparison.Ordinal))
        {
            TakeFormat(text);
        }

        if (Unit is null && (text.Contains("UNIT", StringComparison.Ordinal) || text.Contains("FORMAT", StringComparison.Ordinal)))
        {
            Unit = WordOf(text) ?? Unit;
            _from = Unit is null ? _from : "comment";
        }
    }

    private static double? WordOf(string text)
    {
        string[] words = text.Split([' ', ':', '/', ',', '=', '{', '}', '\t'], StringSplitOptions.RemoveEmptyEntries);
        return words.Contains("METRIC") || words.Contains("MM") || words.Contains("MILLIMETERS") ? 1
            : words.Contains("INCH") || words.Contains("INCHES") || words.Contains("ENGLISH") ? 25.4
            : null;
    }

    private void TakePlating(string text)
    {
        bool bare = text.Contains("NON_PLATED", StringComparison.Ordinal) || text.Contains("NON-PLATED", StringComparison.Ordinal)
            || text.Contains("NONPLATED", StringComparison.Ordinal) || text.Contains("NPTH", StringComparison.Ordinal)
            || text.Contains("UNPLATED", StringComparison.Ordinal) || text.Contains("NOT PLATED", StringComparison.Ordinal);
        bool plated = !bare && (text.Contains("PLATED", StringComparison.Ordinal) || text.Contains("PTH", StringComparison.Ordinal))
            && !text.Contains("MIXED", StringComparison.Ordinal);
        if (!bare && !plated)
        {
            return;
        }

        Plating plating = bare ? Plating.Bare : Plating.Plated;
        int start = text.IndexOf("START AT T", StringComparison.Ordinal);
        if (start >= 0)
        {
            int end = start + "START AT T".Length;
            int first = end;
            while (end < text.Length && char.IsAsciiDigit(text[end]))
            {
                end++;
            }

            if (Numeral.TryParseInt(text.AsSpan(first, end - first), out int tool))
            {
                FromTool.Add((tool, plating));
            }

            return;
        }

        if (text.Contains("FILEFUNCTION", StringComparison.Ordinal) || text.Contains("CONTENTS", StringComparison.Ordinal))
        {
            File = plating;
        }

        Current = plating;
    }

    private void TakeUse(string text)
    {
        Use = text.Contains("VIADRILL", StringComparison.Ordinal) ? "via"
            : text.Contains("COMPONENTDRILL", StringComparison.Ordinal) ? "pin"
            : text.Contains("MECHANICALDRILL", StringComparison.Ordinal) ? "mounting"
            : text.Contains("TA.APERFUNCTION", StringComparison.Ordinal) ? ""
            : Use;
    }

    // "FILE_FORMAT=2:4", "Format : 3.3 / Absolute / MM / Leading", "FORMAT={3:3/ absolute / metric / suppress leading zeros}".
    private void TakeFormat(string text)
    {
        for (int i = 1; i + 1 < text.Length; i++)
        {
            bool isPair = text[i] is ':' or '.' && char.IsAsciiDigit(text[i - 1]) && char.IsAsciiDigit(text[i + 1])
                && (i < 2 || !char.IsAsciiDigit(text[i - 2])) && (i + 2 >= text.Length || !char.IsAsciiDigit(text[i + 2]));
            if (isPair)
            {
                (IntegerDigits, DecimalDigits) = (text[i - 1] - '0', text[i + 1] - '0');
                _from = "comment";
                break;
            }
        }

        if (Zeros == DrillZeros.Unknown)
        {
            // Comments speak of the zeros left out, the header words LZ and TZ of those kept.
            bool suppress = text.Contains("SUPPRESS", StringComparison.Ordinal) || text.Contains("OMIT", StringComparison.Ordinal);
            Zeros = suppress && text.Contains("LEADING", StringComparison.Ordinal) ? DrillZeros.TrailingKept
                : suppress && text.Contains("TRAILING", StringComparison.Ordinal) ? DrillZeros.LeadingKept
                : Zeros;
        }
    }
}
