using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Profiles;
using ShellForge.Checks.Gauges;
using ShellForge.Formats.ThreeMf;
using ShellForge.Planning.Plan;

namespace ShellForge.Output.Plates;

/// <summary>A plate of a housing with its file.</summary>
/// <param name="File">Name of its 3MF file.</param>
/// <param name="Plate">What lies on it.</param>
/// <param name="Parts">Names of its parts.</param>
public sealed record HousingPlate(string File, PrintPlate Plate, ImmutableArray<string> Parts);

/// <summary>
/// The plates on which a housing is printed. 3MF's core knows one build a file, so each plate is a file of its own: <c>housing.3mf</c>
/// where one does, else <c>housing-1.3mf</c>, <c>housing-2.3mf</c> and so on.
/// </summary>
public static class HousingPlates
{
    /// <summary>The plates of the parts that are written.</summary>
    public static ImmutableArray<HousingPlate> Of(HousingUnderCheck housing)
    {
        PrinterProfile printer = housing.Board.Print.Printer;
        var bed = new PrintBed(printer.BedX, printer.BedY, printer.BedMargin, 1);
        ImmutableArray<PrintPlate> plates = PlateLayout.Arrange(Jobs(housing), bed);
        Dictionary<string, string> parts = housing.Parts.ToDictionary(part => housing.Board.NameOf(part.Name), part => part.Name,
            StringComparer.Ordinal);
        string name = housing.Board.NameOf("housing");
        return [.. plates.Select((plate, i) => new HousingPlate(
            string.Create(CultureInfo.InvariantCulture, $"{name}{(plates.Length == 1 ? "" : $"-{i + 1}")}.3mf"),
            plate,
            [.. plate.Jobs.SelectMany(placed => placed.Job.Bodies).Select(body => parts[body.Name])]))];
    }

    // Parts that fuse are one job: they must lie in each other as they are printed. The part that gives a job its name comes first.
    private static ImmutableArray<PrintJob> Jobs(HousingUnderCheck housing) =>
        [.. housing.SoundParts.Where(part => !part.PrintMesh.IsEmpty)
            .GroupBy(part => part.Plan.PrintedWith ?? part.Name, StringComparer.Ordinal)
            .Select(job => new PrintJob(
                housing.Board.NameOf(job.Key),
                [.. job.OrderBy(part => part.Plan.PrintedWith is not null).Select(part => Body(housing, part))]))];

    private static PrintBody Body(HousingUnderCheck housing, MadePart part) =>
        new(housing.Board.NameOf(part.Name), part.PrintMesh.Mesh, new PrintFilament(part.Plan.Filament.Name, part.Plan.Filament.Screen));
}
