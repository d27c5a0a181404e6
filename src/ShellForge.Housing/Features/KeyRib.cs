using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features;

/// <summary>The rib on the cover's lip and the slot for it in the tub's wall, where the plan has one.</summary>
internal static class KeyRib
{
    /// <summary>Rib and slot.</summary>
    public static IEnumerable<FeatureContribution> Of(HousingPlan plan)
    {
        if (plan.Key.Rib is not { } planned)
        {
            yield break;
        }

        const double overlap = FeatureContribution.Overlap;
        KeyPlan key = plan.Key;
        Region room = plan.Shell.Cavity.Filled();
        bool through = planned.Depth >= plan.Shell.Wall;
        double far = Strips.PastRim(plan.Shell.Footprint);
        Region ribWay = Strips.Radial(key.At, planned.Width, 0, far);
        Region slotWay = Strips.Radial(key.At, planned.SlotWidth, 0, far);

        Region ribBack = through ? plan.Shell.Footprint.Filled() : room.Offset(planned.Depth - planned.Gap);
        Region rib = ribWay.Intersect(ribBack.Less(room.Offset(-plan.Cover.LipGap - overlap)));
        yield return FeatureContribution.Adds(
            PartNames.Cover, Shapes.Extrude(rib, planned.Bottom, key.Top + overlap).Tagged(FaceNames.Tag(FaceFeature.Key)));

        Region slotBack = through ? plan.Shell.Footprint.Filled().Offset(overlap) : room.Offset(planned.Depth);
        Region slot = slotWay.Intersect(slotBack.Less(room.Offset(-overlap)));
        yield return FeatureContribution.Cuts(
            PartNames.Tub, Shapes.Extrude(slot, planned.Bottom - planned.Gap, key.Top + overlap).Tagged(FaceNames.Tag(FaceFeature.Key)));
    }
}
