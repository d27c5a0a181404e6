using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Profiles;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.PrintTime;
using ShellForge.Output.Report;
using ShellForge.Planning.Plan;

namespace ShellForge.Output.Page.Building;

/// <summary>How each part is printed.</summary>
internal static class PagePrints
{
    public static ImmutableArray<PagePart> Of(HousingUnderCheck housing, HousingReport report)
    {
        PrinterProfile printer = housing.Board.Print.Printer;
        return [.. report.Parts.Select(part => Of(part, housing.Part(part.Name)!.Plan, part.Estimate, printer))];
    }

    private static PagePart Of(PartReport part, PartPlan plan, PrintEstimate estimate, PrinterProfile printer) => new(
        part.Name,
        Files(part),
        part.Filament,
        string.Create(CultureInfo.InvariantCulture,
            $"{part.Size.X:0.0}\u00a0\u00d7\u00a0{part.Size.Y:0.0}\u00a0\u00d7\u00a0{part.Size.Z:0.0}\u00a0mm"),
        string.Create(CultureInfo.InvariantCulture, $"{estimate.Grams:0.0}\u00a0g"),
        estimate.Changes == 0 ? Duration(estimate.Minutes)
            : $"{Duration(estimate.Minutes)}, {(estimate.Changes == 1 ? "a change" : $"{estimate.Changes} changes")} of filament among it",
        plan.LiesOn,
        string.Create(CultureInfo.InvariantCulture, $"{printer.LayerHeight.Value:0.##} mm, first {printer.FirstLayerHeight.Value:0.##} mm"),
        $"{printer.Motion.Perimeters.Value} lines, {100 * printer.Motion.Infill:0} % infill",
        "none");

    public static ImmutableArray<string> AdviceOf(HousingUnderCheck housing, HousingReport report)
    {
        var advice = ImmutableArray.CreateBuilder<string>();
        advice.Add("Print the parts as they lie in their files. None needs support; none of them has to be turned.");
        advice.Add(housing.Board.Print.Printer.SlicerScalesShrinkage
            ? "Your printer profile says that the slicer scales for shrinkage: the files are at their size in the hand. Switch off its "
                + "compensation for holes and elephant's foot."
            : "Switch off the slicer's own compensation for shrinkage, holes and elephant's foot: all three are in the files already.");
        foreach (PartReport part in report.Parts.Where(part => part.PrintedWith is not null))
        {
            string open = part.Plate is not null
                ? $"open {part.Plate}, where it already lies in the {part.PrintedWith} as a body of the same object"
                : part.File is not null
                    ? $"open {part.File} and the {part.PrintedWith}'s file together, as one object of two bodies, and move neither"
                : "make the files as 3MF, where both are one object";
            advice.Add($"The {part.Name} is printed into the {part.PrintedWith}, both in the same layers, with two filaments: {open}. "
                + "If your slicer shows one body, split it into its bodies there, and give each its filament.");
        }

        advice.Add(
            $"Time and mass are estimates {PrintEstimate.AssumptionsOf(housing.Board.Print.Printer)}. Heating and changes of filament are "
                + $"counted in.");
        return advice.ToImmutable();
    }

    private static string Files(PartReport part)
    {
        string files = string.Join(", ", new[] { part.File, part.Plate }.OfType<string>());
        return files.Length == 0 ? "none asked for" : part.PrintedWith is null ? files : $"{files}, in one object with {part.PrintedWith}";
    }

    // On the page a number keeps with its unit.
    private static string Duration(double minutes) => PrintEstimate.Duration(minutes).Replace(' ', '\u00a0');
}
