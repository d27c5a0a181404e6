using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features.Holders;

/// <content>The clamp ring with its holes, and the pockets for its ears in the tub.</content>
internal sealed partial class HolderBodies
{
    /// <inheritdoc />
    public IEnumerable<FeatureContribution> Clamp(ClampPlan holder)
    {
        yield return FeatureContribution.Adds(
            PartNames.Clamp, Shapes.Extrude(holder.Outline, holder.Bottom, holder.Top).Tagged(Tag(0)));
        foreach (ScrewJointPlan screw in plan.Screws.Where(screw => screw.Use == ScrewUse.Clamp))
        {
            yield return FeatureContribution.Cuts(PartNames.Clamp, Shapes.Extrude(
                Region.Disc(screw.At, Ring.Hole(screw.PassDiameter / 2)), holder.Bottom - Overlap, holder.Top + Overlap).Tagged(Tag(0)));
        }

        foreach (Solid chamfer in BedChamfers.OfBody(holder.Outline, holder.Top, holder.BedChamfer, towardsViewer: true))
        {
            yield return FeatureContribution.Cuts(PartNames.Clamp, chamfer.Tagged(FaceNames.Tag(FaceFeature.BedChamfer)));
        }

        yield return FeatureContribution.Cuts(
            PartNames.Tub, Shapes.Extrude(holder.Pockets, holder.PocketBottom, plan.Stack.PartingLine + Overlap).Tagged(Tag(1)));
    }
}
