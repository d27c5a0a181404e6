using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features;

/// <summary>
/// A rounded edge as a cutter: what lies outside of a body that widens from the bed as the edge's section does, and, in an open bore,
/// inside of one that narrows. Where walls bulge round closure screws the bodies of wall and bulges are kept together, so that their edges
/// meet in a mitre.
/// <code>
///        |  /        the last facet goes on past the wall's face, and a little over the edge:
///        | /         the cutter ends there in the open
///        |/
///       /|
///     _/ |           kept: right of the section
///    /___|___ bed    the slant goes on past the bed
/// </code>
/// </summary>
internal static class RoundedEdge
{
    // How far the cutter stands out of the outline, mm.
    private const double PastOutline = 0.6;

    /// <summary>The cutter of the shell's outer edge.</summary>
    public static Solid Outside(ShellPlan shell, EdgePlan edge)
    {
        ImmutableArray<EdgePoint> kept = Kept(edge);
        ImmutableArray<EdgePoint> cut = Cut(edge);
        Solid slab = Shapes.Extrude(shell.Footprint.Filled().Offset(PastOutline), cut[0].Height, cut[^1].Height);
        if (shell.Round is not { } round)
        {
            return slab.Less(shell.Footprint.Filled().Loops.Select(loop => Widening(loop, kept)));
        }

        IEnumerable<Solid> ears = shell.Lobes.Where(lobe => !lobe.IntoBore)
            .Select(lobe => Widening(RoundRegions.LobeRing(lobe), lobe.At, kept));
        return slab.Less([Widening(RoundRegions.Ring(round, round.Outer, RingSide.Inside), Point2.Origin, kept), .. ears]);
    }

    /// <summary>The cutter of the edge of an open bore.</summary>
    public static Solid InBore(ShellPlan shell, RoundShell round, EdgePlan edge)
    {
        Ring bore = RoundRegions.Ring(round, round.BoreInner, RingSide.Outside);
        Solid inside = Body([.. Cut(edge).Select(point => (bore.Coaxial(bore.Radius + point.Inset, bore.Side).Points, point.Height))]);
        ImmutableArray<Solid> lobes = [.. shell.Lobes.Where(lobe => lobe.IntoBore)
            .Select(lobe => Widening(RoundRegions.LobeRing(lobe), lobe.At, Kept(edge)))];
        return lobes.IsEmpty ? inside : inside.Less(lobes);
    }

    // What is kept goes on past the cutter's ends: no two caps then lie in one plane.
    private static ImmutableArray<EdgePoint> Kept(EdgePlan edge) => Section(edge, EdgePlan.PastBed, EdgePlan.PastWall);

    private static ImmutableArray<EdgePoint> Cut(EdgePlan edge) => Section(edge, EdgePlan.PastBed / 2, EdgePlan.PastWall / 2);

    // The section with its first facet drawn on below the bed, so far inside, and its last past the wall's face, so far outside.
    private static ImmutableArray<EdgePoint> Section(EdgePlan edge, double inside, double outside)
    {
        ImmutableArray<EdgePoint> points = edge.Points;
        EdgePoint steep = points[^2];
        double rise = (edge.Radius - steep.Height) / steep.Inset;
        return
        [
            new EdgePoint(edge.Inset + inside, 0 - (inside * edge.Lean.Cos / edge.Lean.Sin)),
            .. points[1..^1],
            new EdgePoint(0 - outside, edge.Radius + (outside * rise)),
        ];
    }

    private static Solid Widening(ImmutableArray<Point2> loop, ImmutableArray<EdgePoint> section) => Body(
        [.. section.Select(point => (OutlineOffsets.Mitred(loop, 0 - point.Inset)!.Value, point.Height))]);

    private static Solid Widening(Ring ring, Point2 axis, ImmutableArray<EdgePoint> section)
    {
        Point2 shift = Lattice.Snap(axis);
        return Body([.. section.Select(point => (
            ring.Coaxial(ring.Radius - point.Inset, ring.Side).Points.Select(corner => corner + shift).ToImmutableArray(), point.Height))]);
    }

    private static Solid Body(IEnumerable<(ImmutableArray<Point2> Outline, double Z)> levels) =>
        Shapes.Loft([.. levels.Select(level => ((IReadOnlyList<Point2>)level.Outline, level.Z))]);
}
