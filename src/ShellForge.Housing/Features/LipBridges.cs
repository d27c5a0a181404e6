using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features;

/// <summary>
/// Fills the gap between lip and tongue: where the tub's wall is open the gap serves nothing, could not be printed cleanly, and would let
/// light out beside the tongue.
/// </summary>
internal static class LipBridges
{
    /// <summary>A bridge behind each tongue.</summary>
    public static IEnumerable<FeatureContribution> Of(HousingPlan plan) =>
        plan.Tongues.SelectMany(each => Bridge(plan, each.Tongue, each.Number));

    private static IEnumerable<FeatureContribution> Bridge(HousingPlan plan, PlacedTongue placed, int number)
    {
        const double overlap = FeatureContribution.Overlap;
        (TonguePlan tongue, Point2 through, Angle direction) = (placed.Tongue, placed.Through, placed.Faces);
        Region room = plan.Shell.Cavity.Filled();
        double outward = Point2.Dot(through, Point2.Polar(1, direction));
        Region way = Strips.Along(through, direction, tongue.Width, -outward, Strips.PastRim(plan.Shell.Footprint) - outward);
        Region bridge = way.Intersect(
            room.Offset(overlap).Intersect(plan.Shell.Footprint).Less(room.Offset(-plan.Cover.LipGap - overlap)));

        // Nothing to bridge to where the lip itself is left out, as beside a connector that stands high; an ear at its end holds nothing.
        bridge = Region.Union(bridge.Intersect(plan.Cover.Lip.Offset(plan.Cover.LipGap + (2 * overlap)))
            .Parts.Where(part => part.Area >= plan.Cover.LeastBridge * (plan.Cover.LipGap + overlap)));
        if (!bridge.IsEmpty)
        {
            yield return FeatureContribution.Adds(
                PartNames.Cover,
                Shapes.Extrude(bridge, Math.Max(plan.Cover.LipBottom, tongue.Bottom), plan.Stack.PartingLine + overlap)
                    .Tagged(FaceNames.Tag(FaceFeature.Tongue, number)));
        }
    }
}
