using System.Text.RegularExpressions;
using ShellForge.Checks.Findings;
using ShellForge.Output.Report;
using ShellForge.Sweep.Variants;

namespace ShellForge.Sweep.Rows;

/// <summary>
/// Whether a row that was read is one that a sweep can have written: all lists there and as long as they are said to be, names that lead
/// nowhere else, figures that are numbers. A row may come from somebody else, or have been edited; what it says of its variant is believed.
/// </summary>
internal static partial class SoundRow
{
    // Far beyond any housing: mm, grams, minutes, kelvin.
    private const double LargestFigure = 1e9;

    private const int Coordinates = 3;

    // As a profile may say it.
    private const int LongestColour = 7;

    private static readonly string[] Outcomes = [VariantOutcome.Made, VariantOutcome.Refused, VariantOutcome.Failed];
    private static readonly string[] Verdicts = [.. Enum.GetValues<Verdict>().Select(ReportJson.Word)];
    private static readonly string[] Severities = [.. Enum.GetValues<Severity>().Select(ReportJson.Word)];

    /// <summary>Whether a row is sound.</summary>
    public static bool Is(VariantRow? row) =>
        row is { Key: not null, Folder: not null, Code: not null, Board: not null }
        && VariantNames.IsKey(row.Key) && VariantNames.IsCodeOf(row.Folder, row.Code)
        && Outcomes.Contains(row.Outcome) && row.Housing is null == (row.Outcome != VariantOutcome.Made)
        && row.Faults is not null && row.Faults.All(fault => fault is not null) && AreNamed(row.Values)
        && (row.Housing is null || Is(row.Housing));

    private static bool Is(HousingFigures housing) =>
        housing is { Name: not null, Printer: not null, Screws: >= 0 }
        && Verdicts.Contains(housing.Verdict)
        && AreFigures(housing.Size, Coordinates) && AreFigures(housing.Bed, 2) && housing.BedMargin >= 0
        && housing.Bed.All(side => side > 2 * housing.BedMargin)
        && new[]
        {
            housing.Grams, housing.Minutes, housing.Cost ?? 0, housing.Clearance ?? 0, housing.Evenness ?? 0, housing.WarmestPlastic,
            housing.HeatMargin, housing.BedMargin,
        }.All(IsFigure)
        && housing.Parts is not null && housing.Parts.All(Is) && housing.Findings is not null && housing.Findings.All(Is)
        && housing.Stops == CountOf(housing, Severity.Stop) && housing.Warnings == CountOf(housing, Severity.Warn)
        && housing.Shopping is not null && housing.Shopping.All(item => item is { Item: not null, Count: >= 0 })
        && AreNamed(housing.Resolved);

    private static int CountOf(HousingFigures housing, Severity severity)
    {
        string word = ReportJson.Word(severity);
        return housing.Findings.Count(finding => finding.Severity == word);
    }

    private static bool Is(PartFigures part) =>
        part is { Name: not null, Filament: not null, Shape: not null, Colour: not null }
        && PartName.IsMatch(part.Name) && (part.PrintedWith is null || PartName.IsMatch(part.PrintedWith))
        && part.Colour.Length <= LongestColour && IsFigure(part.Grams)
        && AreFigures(part.At, Coordinates) && AreFigures(part.Size, Coordinates) && part.Size.All(side => side >= 0);

    private static bool Is(FindingFigures finding) =>
        finding is { Rule: not null, Subject: not null, Message: not null } && Severities.Contains(finding.Severity);

    private static bool AreNamed(IReadOnlyList<NamedText> texts) =>
        texts is not null && texts.All(text => text is { Name: not null, Text: not null });

    private static bool AreFigures(IReadOnlyList<double> figures, int count) =>
        figures is not null && figures.Count == count && figures.All(IsFigure);

    private static bool IsFigure(double figure) => Math.Abs(figure) <= LargestFigure;

    // It stands in the names of files: nothing that leads to another folder.
    [GeneratedRegex(@"^[A-Za-z0-9][A-Za-z0-9_-]{0,99}\z", RegexOptions.CultureInvariant)]
    private static partial Regex PartName { get; }
}
