using System.Globalization;
using ShellForge.Checks.Findings;

namespace ShellForge.Output.Words;

/// <summary>What page and terminal say alike of a finding.</summary>
public static class FindingWords
{
    /// <summary>"measured 0.55 mm", "limit 0.95 mm": what is known of the two.</summary>
    public static IEnumerable<string> Figures(Finding finding)
    {
        if (finding.Measured is { } measured && double.IsFinite(measured))
        {
            yield return $"measured {WithUnit(measured, finding.Unit)}";
        }

        if (finding.Limit is { } limit && double.IsFinite(limit))
        {
            yield return $"limit {WithUnit(limit, finding.Unit)}";
        }
    }

    /// <summary>A message or remedy as a sentence of its own.</summary>
    public static string Sentence(string text) =>
        text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..] + (text[^1] is '.' or '!' or '?' ? "" : ".");

    private static string WithUnit(double value, string unit)
    {
        string number = value.ToString("0.##", CultureInfo.InvariantCulture);
        return unit switch
        {
            "" => number,
            "mm2" => $"{number} mm\u00b2",
            "mm3" => $"{number} mm\u00b3",
            _ => $"{number} {unit}",
        };
    }
}
