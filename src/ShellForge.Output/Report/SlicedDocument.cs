using System.Collections.Immutable;
using System.ComponentModel;
using System.Text.Json.Serialization;
using ShellForge.Board.Json;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.PrintTime;
using ShellForge.Checks.Sliced;

namespace ShellForge.Output.Report;

/// <summary>What the maker's slicer says of a file, beside what is planned. Report, print sheet and page are told from it.</summary>
internal sealed record SlicedDocument(
    [property: Description("Name of the file.")] string File,
    [property: Description("The parts that it prints; none where nothing tells.")] ImmutableArray<string> Parts,
    [property: JsonConverter(typeof(Whole)), Description("Time as the slicer says it, without heating; null where it says none.")]
    double? Minutes,
    [property: JsonConverter(typeof(Whole)), Description("Our time, without heating.")] double OurMinutes,
    [property: JsonConverter(typeof(Tenths)), Description("Plastic as the slicer says it; null where nothing tells.")] double? PlasticG,
    [property: JsonConverter(typeof(Tenths)), Description("Our plastic.")] double OurPlasticG,
    [property: Description("Length of filament by tool.")] ImmutableArray<double> FilamentM,
    [property: JsonConverter(typeof(Hundredths)), Description("Our length of all filament.")] double OurFilamentM,
    double LayerHeightMm,
    double FirstLayerMm,
    int Layers,
    int FilamentChanges,
    [property: Description("Changes of filament as planned.")] int OurFilamentChanges,
    [property: Description("Length of the lines of support; null where the file does not tell them apart.")] double? SupportM,
    [property: Description("Nozzle temperature of the first layer; null where the file does not say.")] double? FirstLayerCelsius,
    [property: Description("Lines round every layer; null where the file does not say.")] int? Perimeters,
    [property: Description("Share of plastic in the fill, 0 to 1; null where the file does not say.")] double? Infill)
{
    private const double Thousand = 1000;

    /// <summary>Time of the slicer over ours, less 1; null where it says none.</summary>
    [JsonIgnore]
    public double? MoreTime => Share(Minutes, OurMinutes);

    /// <summary>The same for the plastic.</summary>
    [JsonIgnore]
    public double? MorePlastic => Share(PlasticG, OurPlasticG);

    /// <summary>All files of a housing that the maker gave; null for none.</summary>
    public static ImmutableArray<SlicedDocument>? AllOf(HousingUnderCheck housing) =>
        housing.Sliced.IsEmpty ? null : [.. housing.Sliced.Select(job => Of(housing, job))];

    private static SlicedDocument Of(HousingUnderCheck housing, SlicedJob job)
    {
        PrintEstimate[] ours = [.. job.Parts.Select(part => PrintEstimate.Printed(housing, part))];
        double changing = housing.Board.Print.Printer.Motion.ChangeTime / 60;
        return new SlicedDocument(
            job.File.Name, [.. job.Parts.Select(part => part.Name)], job.Minutes,
            ours.Sum(each => each.LayingMinutes + (each.Changes * changing)), job.Grams, ours.Sum(each => each.Grams),
            [.. job.Code.FilamentMillimetres.Select(length => length / Thousand)], ours.Sum(each => each.FilamentMetres),
            job.Code.LayerHeight, job.Code.FirstLayer, job.Code.Layers, job.Code.ToolChanges, ours.Sum(each => each.Changes),
            job.Code.TellsKinds ? job.Code.SupportLength / Thousand : null, job.Code.FirstLayerCelsius, job.Code.Walls, job.Code.Infill);
    }

    private static double? Share(double? theirs, double ours) => theirs is { } value && ours > 0 ? (value / ours) - 1 : null;
}
