using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Planning.Draft;

namespace ShellForge.Planning.Closures;

/// <summary>
/// Section of a snap bead, the same for the lip that must be long enough for it and for the closure that uses it. Both flanks stand
/// at 45 degrees: the one towards the viewer prints without support with the face down and lets the cover come off again, the other
/// leads in.
/// </summary>
/// <param name="Interference">How far bead and wall overlap per side when the cover sits centred, mm.</param>
/// <param name="Height">Bead height off the lip: gap plus interference, mm.</param>
/// <param name="Width">Height of the bead along z at its root, mm.</param>
/// <param name="Strain">Strain of the ring that gives while closing, as a fraction.</param>
/// <param name="StrainAllowed">What the filament bears again and again along its layers.</param>
/// <param name="CatchAfterTolerance">Interference left when both parts come out against it, mm.</param>
internal sealed record SnapSection(
    double Interference, double Height, double Width, double Strain, double StrainAllowed, double CatchAfterTolerance)
{
    /// <summary>Catch below which a cover falls off by itself, mm. Typical: trade knowledge, confirm with a coupon.</summary>
    public const double CatchMinimum = 0.15;

    /// <summary>Flat of the bead's crest, mm: half a line, so that it is drawn at all.</summary>
    public const double Crest = 0.2;

    /// <summary>What stays free above and below the bead on the lip, mm.</summary>
    public const double Land = 0.3;

    // Wanted on top of the least catch, mm, so that the nominal fit is not the limit case.
    private const double Reserve = 0.05;

    // Below this a bead is no bead, mm; only reached where the closure is refused anyway.
    private const double InterferenceMinimum = 0.1;

    /// <summary>The section for a lip of a diameter.</summary>
    /// <param name="diameter">Diameter of the ring that gives, mm.</param>
    /// <param name="gap">Gap per side between lip and wall, mm.</param>
    /// <param name="filament">Filament of cover and tub.</param>
    /// <param name="printer">For the spread of sizes: half of it on each side of each of the two parts.</param>
    public static SnapSection Of(double diameter, double gap, FilamentProfile filament, PrinterProfile printer)
    {
        double tolerance = printer.Accuracy;
        double bearable = filament.StrainAlongLayers * diameter / 2;
        double interference = Math.Max(InterferenceMinimum, Hundredths(Math.Min(CatchMinimum + tolerance + Reserve, bearable)));
        double height = gap + interference;
        return new SnapSection(
            interference, height, (2 * height) + Crest, 2 * interference / diameter, filament.StrainAlongLayers, interference - tolerance);
    }

    /// <summary>Diameter of the circle as long round as a board's edge, mm: what gives on any outline is the way round, not the corners' reach.</summary>
    public static double RingOf(BoardOutline outline) =>
        outline is PolygonOutline ? outline.Region.Filled().Perimeter / Math.PI : 2 * outline.OuterRadius;

    // Rounded down: the strain must stay below the limit.
    private static double Hundredths(double length) => Math.Floor((length + Layers.Slack) * 100) / 100;
}
