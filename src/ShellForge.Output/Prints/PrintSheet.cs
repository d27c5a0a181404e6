using System.Collections.Immutable;
using System.ComponentModel;
using System.Text.Json.Serialization;
using ShellForge.Board.Json;
using ShellForge.Board.Profiles;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Output.Report;
using ShellForge.Planning.Plan;
using ShellForge.Planning.Prints;

namespace ShellForge.Output.Prints;

/// <summary>
/// How each part is printed: what plan, profile and written mesh say, for whoever sets a slicer by hand or by a script. Page, text and
/// JSON are all told from it. Members stand in the order of the file.
/// </summary>
internal sealed record PrintSheet(
    string Format,
    [property: Description("Name of the housing.")] string Name,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull), Description("Revision mark.")] string? Revision,
    [property: Description("Name of the printer's profile.")] string Printer,
    double NozzleMm,
    [property: Description("Whether the slicer has to scale for shrinkage; otherwise the files are scaled, and the slicer must not.")]
    bool SlicerScalesShrinkage,
    [property: JsonConverter(typeof(Tenths)), Description("Plastic of all parts as printed.")] double PlasticG,
    [property: Description("All prints one after the other.")] int Minutes,
    [property: Description("The printed parts, from the floor up.")] ImmutableArray<PrintedPart> Parts,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    [property: Description("What the maker's slicer says of its G-code, beside what is planned; left out where none was given.")]
    ImmutableArray<SlicedDocument>? Sliced)
{
    /// <summary>What <c>format</c> says.</summary>
    public const string FormatName = "shellforge-print/1";

    /// <summary>Name of its file for machines.</summary>
    public const string JsonFile = "print.json";

    public static byte[] Bytes(PrintSheet sheet) => JsonText.Bytes(sheet, PrintSheetContext.Default.PrintSheet);

    public static string Schema() => DocumentSchema.Json(PrintSheetContext.Default.PrintSheet, FormatName);

    public static PrintSheet Of(HousingUnderCheck housing, HousingReport report)
    {
        PrinterProfile printer = housing.Board.Print.Printer;
        return new PrintSheet(
            FormatName, report.Name, report.Revision.Length > 0 ? report.Revision : null, printer.Name, printer.Nozzle,
            printer.SlicerScalesShrinkage, report.Grams, report.Minutes,
            [.. report.Parts.Select(part => PrintedPart.Of(housing, part, printer))], SlicedDocument.AllOf(housing));
    }
}

/// <summary>How a part is printed.</summary>
internal sealed record PrintedPart(
    [property: Description("Name of the part.")] string Name,
    [property: Description("Name of its file; null where none was asked for.")] string? File,
    [property: Description("Name of the file with the plate it lies on; null where none was asked for.")] string? Plate,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    [property: Description("The part that it is printed into, in one object with it.")] string? PrintedWith,
    [property: Description("Name of its filament.")] string Filament,
    [property: Description("Which face lies on the bed; the files lie so already.")] string LiesOn,
    [property: Description("Whether it needs support.")] bool Support,
    [property: Description("Extent on the bed: x, y, z.")] ImmutableArray<double> SizeMm,
    double LineWidthMm,
    [property: Description("Lines drawn round every layer.")] int Perimeters,
    double LayerHeightMm,
    double FirstLayerMm,
    [property: Description("Layers of the part.")] int Layers,
    [property: Description("Solid layers over every floor and under every roof.")] int SkinLayers,
    [property: Description("Share of plastic in what is left, 0 to 1.")] double Infill,
    [property: Description("Why it is so.")] string InfillWhy,
    [property: Description("Directions of the fill's lines, in turn from layer to layer, counter-clockwise from the bed's x; empty where "
        + "they do not matter.")]
    ImmutableArray<double> FillAnglesDeg,
    [property: Description("Places that have to be solid and are not by lines and skins alone, in the part's own file.")]
    ImmutableArray<SolidColumn> Solid,
    [property: Description("Layers that hold a second filament.")] ImmutableArray<SharedLayers> SharedLayers,
    [property: Description("Where the print has to be stopped by hand.")] ImmutableArray<PrintPause> Pauses,
    [property: JsonConverter(typeof(Tenths))] double PlasticG,
    [property: JsonConverter(typeof(Hundredths))] double FilamentM,
    int Minutes)
{
    public static PrintedPart Of(HousingUnderCheck housing, PartReport report, PrinterProfile printer)
    {
        MadePart part = housing.Part(report.Name)!;
        PartPrint print = part.Plan.Print;
        ImmutableArray<SharedLayers> shared = part.Plan.PrintedWith is { } with && housing.Part(with) is { IsSound: true } other
            ? Prints.SharedLayers.Of(housing.LayersOf(part), housing.LayersOf(other), print, with)
            : [];
        return new PrintedPart(
            report.Name, report.File, report.Plate, report.PrintedWith, report.Filament, part.Plan.LiesOn, Support: false,
            [report.Size.X, report.Size.Y, report.Size.Z], print.LineWidth, print.Perimeters, print.LayerHeight, print.FirstLayer,
            housing.LayersOf(part).Layers.Length, print.SkinLayers, print.Infill, print.InfillWhy, print.FillAngles,
            [.. print.Solid.Select(place => SolidColumn.Of(place, part.Plan))],
            shared,
            printer.Filaments < 2 ? [.. shared.SelectMany(layers => layers.Pauses(print, report.Filament))] : [],
            report.Estimate.Grams, report.Estimate.FilamentMetres, report.Minutes);
    }
}

/// <summary>An upright round stretch that has to be solid.</summary>
internal sealed record SolidColumn(
    [property: Description("Its name: \"boss 3\".")] string Name,
    [property: Description("x of its axis.")] double XMm,
    [property: Description("y of its axis.")] double YMm,
    double DiameterMm,
    [property: Description("Height above the bed at which it begins.")] double FromMm,
    [property: Description("Height above the bed at which it ends.")] double ToMm)
{
    public static SolidColumn Of(SolidPlace place, PartPlan part)
    {
        Point3 bottom = part.ToFile.Apply(new Point3(place.At.X, place.At.Y, place.Bottom));
        Point3 top = part.ToFile.Apply(new Point3(place.At.X, place.At.Y, place.Top));
        return new SolidColumn(place.Name, bottom.X, bottom.Y, place.Diameter * part.ShrinkScale, Math.Min(bottom.Z, top.Z),
            Math.Max(bottom.Z, top.Z));
    }
}

/// <summary>Neighbouring layers that hold two parts of two filaments.</summary>
internal sealed record SharedLayers(
    [property: Description("The other part.")] string With,
    [property: Description("First of them, counted from 1 at the bed.")] int FromLayer,
    [property: Description("Last of them.")] int ToLayer,
    [property: Description("Height above the bed at which they begin.")] double FromMm,
    [property: Description("Height above the bed at which they end.")] double ToMm)
{
    public static ImmutableArray<SharedLayers> Of(PartLayers part, PartLayers other, PartPrint print, string with)
    {
        var runs = ImmutableArray.CreateBuilder<SharedLayers>();
        foreach (PrintedLayer layer in part.LayersWith(other))
        {
            int number = NumberOf(layer, print);
            if (runs.Count > 0 && runs[^1].ToLayer == number - 1)
            {
                runs[^1] = runs[^1] with { ToLayer = number, ToMm = layer.ToZ };
            }
            else
            {
                runs.Add(new SharedLayers(with, number, number, layer.FromZ, layer.ToZ));
            }
        }

        return runs.ToImmutable();
    }

    public IEnumerable<PrintPause> Pauses(PartPrint print, string filament) => Enumerable.Range(FromLayer, ToLayer - FromLayer + 1)
        .Select(layer => new PrintPause(layer, print.FirstLayer + ((layer - 1) * print.LayerHeight),
            $"change the filament to {filament} and back"));

    // A part that is printed into another may begin above the bed; the slicer counts from the bed.
    private static int NumberOf(PrintedLayer layer, PartPrint print) =>
        1 + (int)Math.Round((layer.ToZ - print.FirstLayer) / print.LayerHeight, MidpointRounding.AwayFromZero);
}

/// <summary>Where the print has to be stopped by hand.</summary>
internal sealed record PrintPause(
    [property: Description("In which layer, counted from 1 at the bed.")] int Layer,
    [property: Description("Height of that layer's upper face above the bed.")] double AtMm,
    [property: Description("What is done.")] string Why);

/// <summary>How it is written.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower,
    GenerationMode = JsonSourceGenerationMode.Metadata,
    Converters = [typeof(Thousandths)])]
[JsonSerializable(typeof(PrintSheet))]
internal sealed partial class PrintSheetContext : JsonSerializerContext;
