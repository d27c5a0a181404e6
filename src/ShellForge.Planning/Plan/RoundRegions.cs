using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Planning.Plan;

/// <summary>Regions of round shells: outer faces inscribed, rooms circumscribed, all on one count and phase.</summary>
public static class RoundRegions
{
    /// <summary>A ring of the shell's stack.</summary>
    public static Ring Ring(RoundShell shell, double radius, RingSide side) => new(radius, side, shell.Count, Angle.Zero);

    /// <summary>A full disc of the shell's stack.</summary>
    public static Region Disc(RoundShell shell, double radius, RingSide side) => Region.Disc(Point2.Origin, Ring(shell, radius, side));

    /// <summary>Everything inside the outer wall, less an open bore, lobes left out.</summary>
    public static Region Footprint(RoundShell shell) => shell.HasBore
        ? Region.Annulus(Ring(shell, shell.Outer, RingSide.Inside), Ring(shell, shell.BoreInner, RingSide.Outside))
        : Disc(shell, shell.Outer, RingSide.Inside);

    /// <summary>The room between the walls.</summary>
    public static Region Cavity(RoundShell shell) => shell.HasBore
        ? Region.Annulus(Ring(shell, shell.Inner, RingSide.Outside), Ring(shell, shell.BoreOuter, RingSide.Inside))
        : Disc(shell, shell.Inner, RingSide.Outside);

    /// <summary>A lobe in plan.</summary>
    public static Region Lobe(ShellLobe lobe) => Region.Disc(lobe.At, LobeRing(lobe));

    /// <summary>The ring of a lobe about its own axis.</summary>
    public static Ring LobeRing(ShellLobe lobe) => Geometry.Planar.Ring.Peg(lobe.Radius);
}
