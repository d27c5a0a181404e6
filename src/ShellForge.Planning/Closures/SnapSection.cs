using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Draft;

namespace ShellForge.Planning.Closures;

/// <summary>
/// Section of a snap bead, the same for the lip that must be long enough for it and for the closure that uses it. The flank towards the
/// viewer holds: it prints without support with the face down, and lets the cover come off again. The other leads in, as flat as guides
/// go, so that a hand closes it.
/// </summary>
/// <param name="Interference">How far bead and wall overlap per side when the cover sits centred, mm.</param>
/// <param name="Height">Bead height off the lip: gap plus interference, mm.</param>
public sealed record SnapSection(double Interference, double Height)
{
    /// <summary>
    /// Angle of the flank that leads in, to the axis. Source: snap-fit design guides, 30 to 45 degrees; the flattest takes least force.
    /// </summary>
    public static readonly Angle LeadIn = Angle.FromDegrees(30);

    /// <summary>Angle of the flank that holds, to the axis: what every printer lays without support.</summary>
    public static readonly Angle Hold = Angle.FromDegrees(45);

    /// <summary>Catch below which a cover falls off by itself, mm. Typical: trade knowledge, confirm with a coupon.</summary>
    public const double CatchMinimum = 0.15;

    /// <summary>Flat of the bead's crest, mm: half a line, so that it is drawn at all.</summary>
    public const double Crest = 0.2;

    /// <summary>A piece of bead shorter than this holds nothing, mm: ten times as long as its crest is high. Typical.</summary>
    public const double ShortestPiece = 2;

    /// <summary>How far the bead keeps from wall that has no groove, mm: the gap of a lip and the spread of two parts.</summary>
    public const double BesideSolidWall = 0.4;

    /// <summary>What stays free above and below the bead on the lip, mm.</summary>
    public const double Land = 0.3;

    // Wanted on top of the least catch, mm, so that the nominal fit is not the limit case.
    private const double Reserve = 0.05;

    /// <summary>Height of the leading flank along z, mm.</summary>
    public double LeadInRun => Run(Height, LeadIn);

    /// <summary>Height of the bead along z at its root, mm.</summary>
    public double Width => LeadInRun + Crest + Run(Height, Hold);

    /// <summary>
    /// The section for a lip of a diameter. Sizes that stray make a bead catch less or strain more: it catches enough at the worst, and
    /// strains no more than its filament repeats at the worst where both can be had.
    /// </summary>
    /// <param name="diameter">Diameter of the ring that gives, mm.</param>
    /// <param name="gap">Gap per side between lip and wall, mm.</param>
    /// <param name="filament">Filament of cover and tub.</param>
    /// <param name="printer">For the spread of sizes: half of it on each side of each of the two parts.</param>
    public static SnapSection Of(double diameter, double gap, FilamentProfile filament, PrinterProfile printer)
    {
        double spread = printer.Accuracy;
        double least = CatchMinimum + spread;
        double bearable = (filament.StrainAlongLayers * diameter / 2) - spread;
        double interference = Hundredths(Math.Max(least, Math.Min(least + Reserve, bearable)));
        return new SnapSection(interference, gap + interference);
    }

    /// <summary>Height along z of a flank that rises by a height off its wall, mm.</summary>
    /// <param name="height">Off the wall, mm.</param>
    /// <param name="flank">Its angle to the axis.</param>
    public static double Run(double height, Angle flank) => height * flank.Cos / flank.Sin;

    /// <summary>
    /// Diameter of the circle as long round as a board's edge, mm: what gives on any outline is the way round, not the corners' reach.
    /// </summary>
    public static double RingOf(BoardOutline outline) =>
        outline is PolygonOutline ? outline.Region.Filled().Perimeter / Math.PI : 2 * outline.OuterRadius;

    // Rounded down: the strain must stay below the limit.
    private static double Hundredths(double length) => Math.Floor((length + Layers.Slack) * 100) / 100;
}
