using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features;

/// <summary>
/// The bead round the cover's lip and the groove in the tub's wall, both with flanks at 45 degrees:
/// <code>
///   lip │\            the upper flank holds, the lower one leads in
///       │ |  bead
///       │/
/// </code>
/// </summary>
internal static class SnapBead
{
    // The groove lies so much lower that the bead's upper flank draws the cover onto the rim, mm.
    private const double Draw = 0.05;

    // Gaps of the lip shorter than twice this come from rounding, mm.
    private const double Rounding = 0.1;

    /// <summary>Bead and groove; nothing for other closures.</summary>
    public static IEnumerable<FeatureContribution> Of(HousingPlan plan)
    {
        if (plan.Closure is not SnapClosurePlan snap)
        {
            yield break;
        }

        double crest = snap.BeadWidth - (2 * snap.BeadHeight);
        Region lipOutside = plan.Shell.Cavity.Filled().Offset(-plan.Cover.LipGap);
        Solid bead = plan.Shell.Round is RoundShell round
            ? Turned(round, round.Inner - plan.Cover.LipGap, snap.BeadZ, snap.BeadHeight, crest)
            : Followed(lipOutside, snap.BeadZ, snap.BeadHeight, crest);
        Region without = Interrupted(plan, snap, lipOutside);
        if (!without.IsEmpty)
        {
            bead = bead.Less(Shapes.Extrude(without, snap.BeadZ - snap.BeadWidth, snap.BeadZ + snap.BeadWidth));
        }

        yield return FeatureContribution.Adds(PartNames.Cover, bead.Tagged(FaceNames.Tag(FaceFeature.Bead)));

        double grooveZ = snap.BeadZ - Draw;
        Solid groove = plan.Shell.Round is RoundShell shell
            ? Turned(shell, shell.Inner, grooveZ, snap.GrooveDepth, crest)
            : Followed(plan.Shell.Cavity.Filled(), grooveZ, snap.GrooveDepth, crest);
        yield return FeatureContribution.Cuts(PartNames.Tub, groove.Tagged(FaceNames.Tag(FaceFeature.Groove)));
        if (snap.BoreHooks.IsEmpty || plan.Shell.Round is not RoundShell ring)
        {
            yield break;
        }

        // At the bore the beads look to the axis.
        double tongue = ring.BoreOuter + plan.Cover.TongueGap;
        Region hooked = Region.Union(snap.BoreHooks.Select(hook => Region.Sector(0, ring.Inner, hook.From, hook.Sweep)));
        Solid hooks = Solid.Intersection(
            TurnedInward(ring, tongue, snap.BeadZ, snap.BoreHookHeight, crest),
            Shapes.Extrude(hooked, snap.BeadZ - snap.BeadWidth, snap.BeadZ + snap.BeadWidth),
            Shapes.Extrude(plan.Cover.Lip.Offset(snap.BoreHookHeight), snap.BeadZ - snap.BeadWidth, snap.BeadZ + snap.BeadWidth));
        yield return FeatureContribution.Adds(PartNames.Cover, hooks.Tagged(FaceNames.Tag(FaceFeature.Bead, 1)));
        yield return FeatureContribution.Cuts(
            PartNames.Tub, TurnedInward(ring, ring.BoreOuter, grooveZ, snap.BoreGrooveDepth, crest).Tagged(FaceNames.Tag(FaceFeature.Groove, 1)));
    }

    // A ridge on a face that looks to the axis.
    private static Solid TurnedInward(RoundShell shell, double radius, double z, double height, double crest)
    {
        double half = (crest / 2) + height;
        double root = radius + FeatureContribution.Overlap;
        return Shapes.Revolve(
            [
                new(root, z - half), new(root, z + half), new(radius, z + half), new(radius - height, z + (crest / 2)),
                new(radius - height, z - (crest / 2)), new(radius, z - half),
            ],
            shell.Count, Angle.Zero, RingSide.Inside);
    }

    // A ridge on a round face, reaching into it by the overlap.
    private static Solid Turned(RoundShell shell, double radius, double z, double height, double crest)
    {
        double half = (crest / 2) + height;
        double root = radius - FeatureContribution.Overlap;
        return Shapes.Revolve(
            [
                new(root, z - half), new(radius, z - half), new(radius + height, z - (crest / 2)),
                new(radius + height, z + (crest / 2)), new(radius, z + half), new(root, z + half),
            ],
            shell.Count, Angle.Zero, RingSide.Outside);
    }

    // The same along any outline, corner by corner; where corners are too tight, in steps as a printer draws it.
    private static Solid Followed(Region face, double z, double height, double crest)
    {
        double half = (crest / 2) + height;
        Region hollow = face.Offset(-FeatureContribution.Overlap);
        var pieces = new List<Solid>();
        foreach (ImmutableArray<Point2> loop in face.Loops)
        {
            if (OutlineOffsets.Mitred(loop, height) is ImmutableArray<Point2> wide)
            {
                // Flanks and crest meet in whole faces, which fuse.
                pieces.Add(Shapes.Loft(loop, z - half, wide, z - (crest / 2)));
                pieces.Add(Shapes.Extrude(Region.Polygon(wide), z - (crest / 2), z + (crest / 2)));
                pieces.Add(Shapes.Loft(wide, z + (crest / 2), loop, z + half));
            }
            else
            {
                pieces.Add(Shapes.Extrude(face.Offset(height / 2), z - half + (height / 2), z + half - (height / 2)));
                pieces.Add(Shapes.Extrude(face.Offset(height), z - (crest / 2), z + (crest / 2)));
            }
        }

        return Solid.Union(pieces).Less(Shapes.Extrude(hollow, z - half - 1, z + half + 1));
    }

    // Where the bead is left out: at slots and key, and where the lip has a gap.
    private static Region Interrupted(HousingPlan plan, SnapClosurePlan snap, Region lipOutside)
    {
        double far = lipOutside.Loops.SelectMany(loop => loop).Max(point => point.Length) + snap.BeadHeight + 1;
        IEnumerable<Region> sectors = snap.Interruptions
            .Select(gap => Region.Sector(0, far, gap.From, gap.Sweep));
        Region whole = lipOutside.Less(lipOutside.Offset(-plan.Cover.LipThickness));
        Region gaps = whole.Less(plan.Cover.Lip).Offset(-Rounding).Offset(Rounding + snap.BeadHeight + Rounding);
        return Region.Union([.. sectors, gaps]);
    }
}
