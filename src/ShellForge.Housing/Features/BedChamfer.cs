using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features;

/// <summary>
/// The 45 degree chamfer along the lower edges of a shell's footprint that stands on z = 0, as a cutter that goes on past bed and wall:
/// what lies outside a cone that widens upwards, and, in an open bore, inside a cone that narrows.
/// </summary>
internal static class BedChamfer
{
    private const double Reach = OutlineOffsets.ChamferReach;

    // The kept cones stand out of the cutter's slab by this at both ends, so that no two caps coincide.
    private const double PastSlab = FeatureContribution.Overlap;

    /// <summary>The cutter of the shell's outer edge.</summary>
    public static Solid Outside(ShellPlan shell, double chamfer)
    {
        Solid slab = Shapes.Extrude(shell.Footprint.Filled().Offset(2 * Reach), -Reach, chamfer + Reach);
        if (shell.Round is not { } round)
        {
            return slab.Less(shell.Footprint.Filled().Loops.Select(loop => Widening(loop, chamfer)));
        }

        IEnumerable<Solid> ears = shell.Lobes.Where(l => !l.IntoBore).Select(l => Cone(RoundRegions.LobeRing(l), l.At, chamfer));
        return slab.Less([Cone(RoundRegions.Ring(round, round.Outer, RingSide.Inside), Point2.Origin, chamfer), .. ears]);
    }

    /// <summary>The cutter of the edge of an open bore.</summary>
    public static Solid InBore(ShellPlan shell, RoundShell round, double chamfer)
    {
        Ring bore = RoundRegions.Ring(round, round.BoreInner, RingSide.Outside);
        Solid inside = Shapes.Taper(
            bore.Coaxial(bore.Radius + chamfer + Reach, bore.Side), -Reach,
            bore.Coaxial(bore.Radius - Reach, bore.Side), chamfer + Reach, Point2.Origin);
        ImmutableArray<Solid> lobes =
            [.. shell.Lobes.Where(l => l.IntoBore).Select(l => Cone(RoundRegions.LobeRing(l), l.At, chamfer))];
        return lobes.IsEmpty ? inside : inside.Less(lobes);
    }

    // Passes through the ring at the chamfer's height, 45 degrees, and stands out of the slab at both ends.
    private static Solid Cone(Ring ring, Point2 axis, double chamfer) => Shapes.Taper(
        ring.Coaxial(ring.Radius - chamfer - Reach - PastSlab, ring.Side), -Reach - PastSlab,
        ring.Coaxial(ring.Radius + Reach + PastSlab, ring.Side), chamfer + Reach + PastSlab, axis);

    private static Solid Widening(ImmutableArray<Point2> loop, double chamfer) => Shapes.Loft(
        OutlineOffsets.Mitred(loop, -chamfer - Reach - PastSlab)!.Value, -Reach - PastSlab,
        OutlineOffsets.Mitred(loop, Reach + PastSlab)!.Value, chamfer + Reach + PastSlab);
}
