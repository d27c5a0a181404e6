using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Checks.PrintTime;
using ShellForge.Output.Report;
using ShellForge.Planning.Hands;

namespace ShellForge.Output.Prints;

/// <summary>What a slicer says of a file in words: the same on the page, as text and on a terminal.</summary>
internal static class SlicedWords
{
    private const string Unsaid = "not said";

    /// <summary>The parts: "tub", "cover and diffuser".</summary>
    public static string Parts(SlicedDocument sliced) => sliced.Parts.IsEmpty ? "no part of this housing" : HandWords.Listed(sliced.Parts);

    /// <summary>All of it, each under its name.</summary>
    public static ImmutableArray<(string What, string Words)> Of(SlicedDocument sliced) =>
    [
        ("time", Time(sliced)), ("plastic", Plastic(sliced)), ("layers", Layers(sliced)), ("walls", Walls(sliced)),
        ("changes", Changes(sliced)), ("support", Support(sliced)),
    ];

    /// <summary>The time beside ours, both without heating: "2 h 05 min; ours 1 h 58 min, 6 % less".</summary>
    public static string Time(SlicedDocument sliced) =>
        Beside(sliced.Minutes is { } minutes ? PrintEstimate.Duration(minutes) : Unsaid, sliced, PrintEstimate.Duration(sliced.OurMinutes),
            sliced.MoreTime, " without heating");

    /// <summary>The plastic beside ours: "22.4 g, 7.34 m; ours 22.0 g, 7.22 m, 2 % less".</summary>
    public static string Plastic(SlicedDocument sliced)
    {
        string lengths = string.Join(" + ", sliced.FilamentM.Where(length => length > 0).Select(Metres));
        string theirs = sliced.PlasticG is { } grams ? $"{Grams(grams)}, {lengths}" : lengths;
        return Beside(theirs, sliced, $"{Grams(sliced.OurPlasticG)}, {Metres(sliced.OurFilamentM)}", sliced.MorePlastic, "");
    }

    /// <summary>The layers: "91 of 0.2 mm, the first 0.2 mm, laid at 245 \u00b0C".</summary>
    public static string Layers(SlicedDocument sliced)
    {
        string at = sliced.FirstLayerCelsius is { } celsius
            ? string.Create(CultureInfo.InvariantCulture, $", laid at {celsius:0} \u00b0C") : "";
        return string.Create(CultureInfo.InvariantCulture,
            $"{sliced.Layers} of {sliced.LayerHeightMm:0.###} mm, the first {sliced.FirstLayerMm:0.###} mm{at}");
    }

    /// <summary>Walls and fill: "4 lines, 20 % fill".</summary>
    public static string Walls(SlicedDocument sliced) => (sliced.Perimeters, sliced.Infill) switch
    {
        (null, null) => Unsaid,
        ({ } lines, null) => Lines(lines),
        (null, { } fill) => Fill(fill),
        ({ } lines, { } fill) => $"{Lines(lines)}, {Fill(fill)}",
    };

    /// <summary>Changes of filament beside ours.</summary>
    public static string Changes(SlicedDocument sliced) => string.Create(CultureInfo.InvariantCulture,
        $"{Count(sliced.FilamentChanges)} of filament{(sliced.Parts.IsEmpty ? "" : $"; planned {Count(sliced.OurFilamentChanges)}")}");

    /// <summary>Support: "none", or how much of it.</summary>
    public static string Support(SlicedDocument sliced) => sliced.SupportM is { } length
        ? length > 0 ? string.Create(CultureInfo.InvariantCulture, $"{length:0.00} m of lines; none is needed") : "none"
        : Unsaid;

    private static string Beside(string theirs, SlicedDocument sliced, string ours, double? more, string how)
    {
        if (sliced.Parts.IsEmpty)
        {
            return theirs;
        }

        string difference = more is not { } share ? ""
            : Math.Round(100 * share, MidpointRounding.AwayFromZero) is var percent && percent == 0 ? ", the same to a percent"
            : string.Create(CultureInfo.InvariantCulture, $", the slicer's is {Math.Abs(percent):0} % {(percent > 0 ? "more" : "less")}");
        return $"{theirs}; ours {ours}{how}{difference}";
    }

    private static string Count(int changes) =>
        changes == 0 ? "none" : changes.ToString(CultureInfo.InvariantCulture);

    private static string Lines(int lines) => string.Create(CultureInfo.InvariantCulture, $"{lines} line{(lines == 1 ? "" : "s")}");

    private static string Fill(double share) => string.Create(CultureInfo.InvariantCulture, $"{100 * share:0} % fill");

    private static string Grams(double grams) => string.Create(CultureInfo.InvariantCulture, $"{grams:0.0} g");

    private static string Metres(double metres) => string.Create(CultureInfo.InvariantCulture, $"{metres:0.00} m");
}
