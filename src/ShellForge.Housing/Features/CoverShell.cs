using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features;

/// <summary>The cover's wall, bezel, lip and the seat that centres baffle and diffuser.</summary>
internal static class CoverShell
{
    /// <summary>The cover without closure, tongues and marks.</summary>
    public static IEnumerable<FeatureContribution> Of(HousingPlan plan)
    {
        const double overlap = FeatureContribution.Overlap;
        CoverPlan cover = plan.Cover;
        double front = plan.Stack.Front;
        double inside = front - cover.BezelThickness;
        yield return FeatureContribution.Adds(PartNames.Cover, Walls(plan).Tagged(FaceNames.Tag(FaceFeature.CoverWall)));

        // The plate ends inside the wall's thickness: only its faces towards window and room are its own.
        Region plate = cover.Cavity.Offset(overlap).Intersect(cover.Footprint).Less(cover.Window);
        yield return FeatureContribution.Adds(
            PartNames.Cover, Shapes.Extrude(plate, inside, front).Tagged(FaceNames.Tag(FaceFeature.Bezel)));
        yield return FeatureContribution.Adds(
            PartNames.Cover,
            Shapes.Extrude(cover.Lip, cover.LipBottom, plan.Stack.PartingLine + overlap).Tagged(FaceNames.Tag(FaceFeature.Lip)));
        if (!cover.Bars.IsEmpty)
        {
            yield return FeatureContribution.Adds(
                PartNames.Cover, Shapes.Extrude(cover.Bars, inside, plan.Stack.DiffuserInner).Tagged(FaceNames.Tag(FaceFeature.Bezel)));
        }

        if (!cover.Seat.IsEmpty)
        {
            yield return FeatureContribution.Adds(
                PartNames.Cover, Shapes.Extrude(cover.Seat, cover.SeatBottom, inside + overlap).Tagged(FaceNames.Tag(FaceFeature.Seat)));
        }

        if (!cover.ToothSlot.IsEmpty)
        {
            yield return FeatureContribution.Cuts(
                PartNames.Cover,
                Shapes.Extrude(cover.ToothSlot, cover.LipBottom - overlap, cover.ToothSlotTop).Tagged(FaceNames.Tag(FaceFeature.Key)));
        }

        // The cover has the tub's outline and lies on its other end: the same cutters, mirrored.
        if (OuterEdge.Cutter(plan.Shell, cover.FrontEdge, cover.FrontEdgeInBore) is { } cutter)
        {
            yield return FeatureContribution.Cuts(
                PartNames.Cover, cutter.Moved(Transform3.Scale(1, 1, -1).Then(Transform3.Shift(0, 0, front))));
        }
    }

    private static Solid Walls(HousingPlan plan) =>
        Shapes.Extrude(plan.Cover.Footprint.Less(plan.Cover.Cavity), plan.Stack.PartingLine, plan.Stack.Front);
}
