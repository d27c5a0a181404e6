using ShellForge.Import.Files;

namespace ShellForge.Import.Idf;

/// <summary>Cuts a line of an IDF file into fields: blanks separate, double quotes hold blanks together.</summary>
internal static class IdfRecord
{
    // The longest record of the standard has nine fields.
    private const int MostFields = 16;

    public static List<string> Fields(ReadOnlySpan<char> line)
    {
        var fields = new List<string>(8);
        int i = 0;
        while (i < line.Length && fields.Count < MostFields)
        {
            if (char.IsWhiteSpace(line[i]))
            {
                i++;
            }
            else if (line[i] == '"')
            {
                int close = line[(i + 1)..].IndexOf('"');
                int end = close < 0 ? line.Length : i + 1 + close;
                fields.Add(line[(i + 1)..end].ToString());
                i = end + 1;
            }
            else
            {
                int start = i;
                while (i < line.Length && !char.IsWhiteSpace(line[i]))
                {
                    i++;
                }

                fields.Add(line[start..i].ToString());
            }
        }

        return fields;
    }

    /// <summary>All given fields as numbers; false as soon as one is none.</summary>
    public static bool Numbers(List<string> fields, Span<double> values, params ReadOnlySpan<int> at)
    {
        for (int i = 0; i < at.Length; i++)
        {
            if (at[i] >= fields.Count || !Numeral.TryParse(fields[at[i]], out values[i]))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Millimetres per unit word; null for a word the standard doesn't know.</summary>
    public static double? UnitOf(string word) => word.ToUpperInvariant() switch
    {
        "MM" => 1,
        "THOU" or "MIL" or "MILS" => 0.0254,
        // Ten nanometres: version 2 only.
        "TNM" => 0.00001,
        "INCH" or "IN" => 25.4,
        _ => null,
    };
}
