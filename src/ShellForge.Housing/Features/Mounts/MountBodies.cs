using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features.Mounts;

/// <summary>Bodies and cuts of the mount, one method a form, each in a file of its own.</summary>
/// <param name="plan">The whole plan.</param>
internal sealed partial class MountBodies(HousingPlan plan) : IMountVisitor<IEnumerable<FeatureContribution>>
{
    private const double Overlap = FeatureContribution.Overlap;

    /// <summary>The mount's bodies and cuts; none without a mount.</summary>
    public static IEnumerable<FeatureContribution> Of(HousingPlan plan) => plan.Mount?.Accept(new MountBodies(plan)) ?? [];

    private static FaceTag Tag(int number) => FaceNames.Tag(FaceFeature.Mount, number);

    // What rises from the tub's floor; nothing where the floor itself is as high.
    private IEnumerable<FeatureContribution> Rising(Region outline, double top, int number)
    {
        if (top > plan.Stack.FloorTop)
        {
            yield return FeatureContribution.Adds(
                PartNames.Tub, Shapes.Extrude(outline, plan.Stack.FloorTop - Overlap, top).Tagged(Tag(number)));
        }
    }
}
