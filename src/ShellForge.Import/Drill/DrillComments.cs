using ShellForge.Import.Files;

namespace ShellForge.Import.Drill;

/// <summary>Tool tables that stand in comments only: "Holesize 1. = 0.800000 Tolerance ... PLATED MM Quantity = 12".</summary>
internal static class DrillComments
{
    public static void HoleSize(ReadOnlySpan<char> comment, Plating current, int line, SortedDictionary<int, DrillTool> tools)
    {
        int word = comment.IndexOf("Holesize", StringComparison.OrdinalIgnoreCase);
        int equals = comment.IndexOf('=');
        if (word < 0 || equals < word)
        {
            return;
        }

        ReadOnlySpan<char> number = comment[(word + "Holesize".Length)..equals].Trim().TrimEnd('.');
        ReadOnlySpan<char> rest = comment[(equals + 1)..].Trim();
        int end = rest.IndexOfAny(' ', '\t');
        ReadOnlySpan<char> size = end < 0 ? rest : rest[..end];
        double? unit = rest.Contains("MILS", StringComparison.OrdinalIgnoreCase) ? 0.0254
            : rest.Contains(" MM", StringComparison.OrdinalIgnoreCase) ? 1
            : rest.Contains("INCH", StringComparison.OrdinalIgnoreCase) ? 25.4
            : null;
        if (unit is null || !Numeral.TryParseInt(number, out int tool) || tool is < 0 or > 100_000
            || !Numeral.TryParse(size, out double diameter) || tools.ContainsKey(tool))
        {
            return;
        }

        Plating plating = rest.Contains("NON_PLATED", StringComparison.OrdinalIgnoreCase) ? Plating.Bare
            : rest.Contains("PLATED", StringComparison.OrdinalIgnoreCase) ? Plating.Plated
            : current;
        tools[tool] = new DrillTool(tool, default, diameter * unit.Value, plating, "", line);
    }
}
