using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Closures;

/// <summary>What a snap bead of a wall has room for, and what its ring bears where sizes stray against it.</summary>
/// <param name="Section">The bead.</param>
/// <param name="Gap">Gap per side between lip and wall, in the hand, mm.</param>
/// <param name="Radius">Radius of the wall that gives, mm.</param>
/// <param name="Caught">Least overlap per side that is left to hold the cover, mm.</param>
/// <param name="Strain">Largest strain of the ring while it closes.</param>
internal sealed record SnapFit(SnapSection Section, double Gap, double Radius, double Caught, double Strain)
{
    /// <summary>Plastic outside the groove, mm: the least wall a printer makes sound.</summary>
    public const double Skin = 0.8;

    /// <summary>The groove is deeper than the bead reaches, mm.</summary>
    public const double GrooveDeeper = 0.1;

    /// <summary>The fit of a wall and its lip.</summary>
    public static SnapFit Of(BoardFile file, ShellPlan shell, LipRing lip)
    {
        PrinterProfile printer = file.Print.Printer;
        double spread = printer.Accuracy;
        double radius = shell.Round?.Inner ?? shell.Cavity.Filled().Perimeter / (2 * Math.PI);
        double gap = Math.Round(lip.Gap - printer.LipCloses, 3);
        SnapSection wanted = SnapSection.Of(SnapSection.RingOf(file.Board.Outline), gap, file.Print.Shell, printer);
        double interference = Math.Min(wanted.Interference, Math.Max(shell.Wall - Skin - GrooveDeeper, 0));
        return new SnapFit(
            new SnapSection(interference, gap + interference), gap, radius, interference - spread,
            2 * (interference + spread) / (2 * (radius - gap)));
    }

    /// <summary>Whether it catches and bears, whichever way sizes stray.</summary>
    /// <param name="filament">Filament of cover and tub.</param>
    public bool Holds(FilamentProfile filament) =>
        Caught >= SnapSection.CatchMinimum - Layers.Slack && Strain <= filament.StrainAlongLayers;
}
