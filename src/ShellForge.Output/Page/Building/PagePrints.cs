using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Profiles;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.PrintTime;
using ShellForge.Output.Prints;
using ShellForge.Output.Report;

namespace ShellForge.Output.Page.Building;

/// <summary>How each part is printed.</summary>
internal static class PagePrints
{
    public static ImmutableArray<PagePart> Of(PrintSheet sheet) => [.. sheet.Parts.Select(Of)];

    private static PagePart Of(PrintedPart part) => new(
        part.Name,
        PrintWords.Files(part),
        part.Filament,
        Kept(PrintWords.Size(part).Replace("x", "\u00d7", StringComparison.Ordinal)),
        Kept(PrintWords.Mass(part)),
        part.SharedLayers.IsEmpty ? Kept(PrintWords.Time(part)) : PrintWords.Time(part),
        part.LiesOn,
        PrintWords.Layers(part).Replace(" mm", "\u00a0mm", StringComparison.Ordinal),
        PrintWords.Walls(part).Replace(" mm", "\u00a0mm", StringComparison.Ordinal),
        PrintWords.Fill(part),
        PrintWords.Pauses(part),
        [.. part.Solid.Select(PrintWords.Solid)]);

    /// <summary>The maker's G-code beside the plan; null where none was given.</summary>
    public static PageTable? SlicedOf(PrintSheet sheet) => sheet.Sliced is not { } sliced ? null : new PageTable(
        "Your G-code beside the plan; times without heating",
        ["", .. sliced.Select(each => each.File)],
        [
            ["prints", .. sliced.Select(SlicedWords.Parts)],
            .. SlicedWords.Of(sliced[0]).Select((figure, i) => ImmutableArray.Create<string>(
                [figure.What, .. sliced.Select(each => SlicedWords.Of(each)[i].Words)])),
        ]);

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

        return advice.ToImmutable();
    }

    /// <summary>What is told with the settings of the parts.</summary>
    public static ImmutableArray<string> NotesOf(PrintSheet sheet, HousingReport report, PrinterProfile printer)
    {
        var advice = ImmutableArray.CreateBuilder<string>();
        foreach (PrintedPart part in sheet.Parts.Where(part => !part.Solid.IsEmpty))
        {
            double whole = report.Parts.First(each => each.Name == part.Name).MassGrams;
            string places = part.Solid.Length == 1 ? "a place" : $"{part.Solid.Length} places";
            advice.Add(string.Create(
                CultureInfo.InvariantCulture,
                $"The {part.Name} has {places} to print solid, since an insert in sparse infill spins and pulls out. Give "
                    + $"{(part.Solid.Length == 1 ? "it" : "them")} full infill "
                    + $"in your slicer, or print the whole part with 100 % infill: about {whole:0.0} g instead of {part.PlasticG:0.0} g."));
        }

        advice.Add(
            $"Time and mass are estimates {PrintEstimate.AssumptionsOf(printer)}. Heating and changes of filament are "
                + $"counted in.");
        return advice.ToImmutable();
    }

    // On the page a number keeps with its unit.
    private static string Kept(string text) => text.Replace(' ', '\u00a0');
}
