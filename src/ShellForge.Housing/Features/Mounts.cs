using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features;

/// <summary>Keyholes, magnet pockets, tripod insert and stand.</summary>
internal static class Mounts
{
    private static readonly FaceTag Tag = FaceNames.Tag(FaceFeature.Mount);

    /// <summary>The mount's bodies and cuts.</summary>
    public static IEnumerable<FeatureContribution> Of(HousingPlan plan) => plan.Mount switch
    {
        KeyholeMountPlan keyholes => keyholes.Keyholes.SelectMany(hole => Keyhole(plan, keyholes, hole)),
        MagnetMountPlan magnets => magnets.At.SelectMany(at => Pocket(plan, magnets, at)),
        TripodMountPlan tripod => Tripod(plan, tripod),
        StandMountPlan stand => Stand(plan, stand),
        _ => [],
    };

    private static IEnumerable<FeatureContribution> Keyhole(HousingPlan plan, KeyholeMountPlan mount, KeyholePlan hole)
    {
        const double overlap = FeatureContribution.Overlap;
        Region block = Region.Slot(hole.Entry, hole.Seat, mount.UndercutWidth + (2 * mount.BlockWall), RingSide.Inside);
        yield return FeatureContribution.Adds(
            PartNames.Tub, Shapes.Extrude(block, plan.Stack.FloorTop - overlap, mount.BlockTop).Tagged(Tag));

        Region undercut = Region.Slot(hole.Entry, hole.Seat, mount.UndercutWidth);
        double shoulder = mount.UndercutTop - mount.RoofChamfer;
        Solid roof = OutlineOffsets.Mitred(undercut.Loops[0], -mount.RoofChamfer) is { } ridge
            ? Shapes.Loft(undercut.Loops[0], shoulder, ridge, mount.UndercutTop)
            : Solid.Empty;
        yield return FeatureContribution.Cuts(PartNames.Tub, Solid.Union(
            Shapes.Extrude(Region.Disc(hole.Entry, Ring.Hole(mount.EntryDiameter / 2)), -overlap, shoulder),
            Shapes.Extrude(Region.Slot(hole.Entry, hole.Seat, mount.SlotWidth), -overlap, mount.LipTop + overlap),
            Shapes.Extrude(undercut, mount.LipTop, shoulder),
            roof).Tagged(Tag));
    }

    private static IEnumerable<FeatureContribution> Pocket(HousingPlan plan, MagnetMountPlan mount, Point2 at)
    {
        const double overlap = FeatureContribution.Overlap;
        Region collar = Region.Disc(at, Ring.Peg(mount.CollarDiameter / 2));
        yield return FeatureContribution.Adds(
            PartNames.Tub, Shapes.Extrude(collar, plan.Stack.FloorTop - overlap, Math.Max(mount.Rim, plan.Stack.FloorTop)).Tagged(Tag));
        Region pocket = Region.Disc(at, Ring.Hole(mount.PocketDiameter / 2));
        Angle inward = Angle.Of(Point2.Origin - at);
        Region mark = Region.Disc(
            at + Point2.Polar(((mount.CollarDiameter + mount.MarkDiameter) / 2) + overlap, inward), Ring.Hole(mount.MarkDiameter / 2));
        yield return FeatureContribution.Cuts(PartNames.Tub, Solid.Union(
            Shapes.Extrude(pocket, mount.Skin, Math.Max(mount.Rim, plan.Stack.FloorTop) + overlap),
            Shapes.Extrude(mark, plan.Stack.FloorTop - (2 * overlap), plan.Stack.FloorTop + overlap)).Tagged(Tag));
    }

    private static IEnumerable<FeatureContribution> Tripod(HousingPlan plan, TripodMountPlan mount)
    {
        const double overlap = FeatureContribution.Overlap;
        Region boss = Region.Disc(mount.At, Ring.Peg(mount.BossDiameter / 2));
        yield return FeatureContribution.Adds(
            PartNames.Tub, Shapes.Extrude(boss, plan.Stack.FloorTop - overlap, mount.BossTop).Tagged(Tag));
        Ring hole = Ring.Hole(mount.HoleDiameter / 2);
        yield return FeatureContribution.Cuts(PartNames.Tub, Solid.Union(
            Shapes.Extrude(Region.Disc(mount.At, hole), -overlap, mount.HoleDepth),
            Shapes.Taper(
                hole.Coaxial((mount.HoleDiameter / 2) + mount.LeadIn + overlap, RingSide.Outside), -overlap,
                hole, mount.LeadIn, mount.At)).Tagged(Tag));
    }

    private static IEnumerable<FeatureContribution> Stand(HousingPlan plan, StandMountPlan stand)
    {
        Region foot = Region.RoundedRectangle(Point2.Origin, stand.Width, stand.Depth, stand.CornerRadius);
        Solid block = Shapes.Extrude(foot, 0, stand.Height).Less(BedChamfers.OfBody(foot, 0, stand.BedChamfer, towardsViewer: false));
        yield return FeatureContribution.Adds(PartNames.Stand, block.Moved(stand.ToHousing).Tagged(Tag));

        // The lip in front ends where the window begins; behind it the housing leans on the whole block.
        Solid pocket = Shapes.Extrude(stand.Pocket, stand.PocketBack, stand.PocketFront);
        Solid view = Shapes.Extrude(stand.LipOver, plan.Stack.Front / 2, stand.PocketFront + stand.Depth);
        yield return FeatureContribution.Cuts(PartNames.Stand, pocket.And(view).Tagged(Tag));
        if (!stand.CableWay.IsEmpty)
        {
            yield return FeatureContribution.Cuts(
                PartNames.Stand, Shapes.Extrude(stand.CableWay, stand.PocketBack - stand.Depth, plan.Stack.PartingLine).Tagged(Tag));
        }
    }
}
