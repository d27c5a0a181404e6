using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Outlines;

namespace ShellForge.Planning.Plan;

/// <summary>Walls and floor in plan. Round boards have <see cref="Round"/>; any outline has the regions, which builders use.</summary>
public sealed record ShellPlan
{
    /// <summary>Everything inside the outer wall face, less an open bore.</summary>
    public required Region Footprint { get; init; }

    /// <summary>The room inside the walls: footprint less walls.</summary>
    public required Region Cavity { get; init; }

    /// <summary>Radii of a round shell; null for other outlines.</summary>
    public RoundShell? Round { get; init; }

    /// <summary>Wall thickness, mm.</summary>
    public required double Wall { get; init; }

    /// <summary>Lines of plastic across the wall.</summary>
    public required int WallLines { get; init; }

    /// <summary>Gap between board edge and wall, mm.</summary>
    public required double BoardEdgeGap { get; init; }

    /// <summary>Chamfer on edges that lie on the bed, mm; 0 where the outline allows none.</summary>
    public required double BedChamfer { get; init; }

    /// <summary>The rounded outer edge of the floor; null where it has the bed's chamfer alone.</summary>
    public EdgePlan? FloorEdge { get; init; }

    /// <summary>The rounded edge of the floor in an open bore; null where it has the bed's chamfer alone.</summary>
    public EdgePlan? FloorEdgeInBore { get; init; }

    /// <summary>Whether any edge of the floor is rounded.</summary>
    public bool HasFloorEdge => FloorEdge is not null || FloorEdgeInBore is not null;

    /// <summary>
    /// Bulges of the walls round closure screws and what holds the board's rim. They are part of <see cref="Footprint"/>, and never
    /// reach into the cavity.
    /// </summary>
    public ImmutableArray<ShellLobe> Lobes { get; init; } = [];

    /// <summary>
    /// Rooms that are cut into walls and lobes from the parting line down, for what holds the board's rim; how deep, that says itself.
    /// </summary>
    public ImmutableArray<Region> Pockets { get; init; } = [];

    /// <summary>The walls in plan, lobes included.</summary>
    public Region Walls => Footprint.Less(Cavity);
}

/// <summary>A round bulge of a wall.</summary>
/// <param name="At">Its axis.</param>
/// <param name="Radius">Its radius, mm.</param>
/// <param name="IntoBore">Whether it bulges into an open bore; otherwise it stands out of the outer wall as an ear.</param>
public sealed record ShellLobe(Point2 At, double Radius, bool IntoBore)
{
    /// <summary>What stands in it, as messages say: "closure screw".</summary>
    public string For { get; init; } = "closure screw";

    /// <summary>Whether a pocket in it opens the tub's rim, so that no bead finds hold there.</summary>
    public bool OpensRim { get; init; }
}

/// <summary>Radii of a round shell, mm, and the polygon that all its coaxial walls share.</summary>
/// <param name="Outer">Outer face of the outer wall.</param>
/// <param name="Inner">Inner face of the outer wall.</param>
/// <param name="BoreOuter">Face of the bore wall that looks to the board; 0 without an open bore.</param>
/// <param name="BoreInner">Face of the bore wall that looks to the axis; 0 without an open bore.</param>
/// <param name="Count">Corners of every coaxial polygon.</param>
public sealed record RoundShell(double Outer, double Inner, double BoreOuter, double BoreInner, int Count)
{
    /// <summary>Whether the bore is open.</summary>
    public bool HasBore => BoreInner > 0;
}

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
