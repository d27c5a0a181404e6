using System.Globalization;
using ShellForge.Checks.PrintTime;

namespace ShellForge.Output.Prints;

/// <summary>The print sheet in words: the same on the page, on paper and as text.</summary>
internal static class PrintWords
{
    public static string Files(PrintedPart part)
    {
        string files = string.Join(", ", new[] { part.File, part.Plate }.OfType<string>());
        return files.Length == 0 ? "none asked for"
            : part.PrintedWith is null ? files : $"{files}, in one object with {part.PrintedWith}";
    }

    public static string Size(PrintedPart part) =>
        string.Create(CultureInfo.InvariantCulture, $"{part.SizeMm[0]:0.0} x {part.SizeMm[1]:0.0} x {part.SizeMm[2]:0.0} mm");

    public static string Mass(PrintedPart part) => string.Create(CultureInfo.InvariantCulture, $"{part.PlasticG:0.0} g");

    public static string Lies(PrintedPart part) => part.LiesOn + (part.Support ? ", with support" : ", no support");

    public static string Time(PrintedPart part)
    {
        int changes = part.SharedLayers.Sum(run => run.ToLayer - run.FromLayer + 1);
        string time = PrintEstimate.Duration(part.Minutes);
        return changes == 0 ? time : $"{time}, {(changes == 1 ? "a change" : $"{changes} changes")} of filament included";
    }

    public static string Layers(PrintedPart part) => string.Create(CultureInfo.InvariantCulture,
        $"{part.Layers} of {part.LayerHeightMm:0.###} mm, the first {part.FirstLayerMm:0.###} mm");

    public static string Walls(PrintedPart part) =>
        string.Create(CultureInfo.InvariantCulture, $"up to {part.Perimeters} lines of {part.LineWidthMm:0.###} mm");

    public static string Fill(PrintedPart part)
    {
        string angles = part.FillAnglesDeg.IsEmpty ? ""
            : $", lines at {string.Join(" and ", part.FillAnglesDeg.Select(a => a.ToString("0.#", CultureInfo.InvariantCulture)))} degrees "
                + "in turn";
        return string.Create(
            CultureInfo.InvariantCulture, $"{100 * part.Infill:0} %{angles}; {part.SkinLayers} solid layers below and above");
    }

    /// <summary>A place that has to be solid: "boss 1: x 12.3, y 40.0, 8.2 wide, from 2.0 to 9.4 mm".</summary>
    public static string Solid(SolidColumn place) => string.Create(CultureInfo.InvariantCulture,
        $"{place.Name}: x {place.XMm:0.0;-0.0;0.0}, y {place.YMm:0.0;-0.0;0.0}, {place.DiameterMm:0.0} wide, from {place.FromMm:0.0} to "
            + $"{place.ToMm:0.0} mm");

    /// <summary>Where the print stops: "none", or the layers.</summary>
    public static string Pauses(PrintedPart part) => part.Pauses.IsEmpty ? "none"
        : string.Join("; ", part.Pauses.GroupBy(pause => pause.Why).Select(pauses =>
            $"{pauses.Key} in {(pauses.Count() == 1 ? "layer" : "layers")} "
                + string.Join(", ", pauses.Select(Layer))));

    private static string Layer(PrintPause pause) =>
        string.Create(CultureInfo.InvariantCulture, $"{pause.Layer} ({pause.AtMm:0.##} mm)");
}
