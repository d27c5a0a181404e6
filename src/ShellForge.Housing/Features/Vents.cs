using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features;

/// <summary>Slots through the floor.</summary>
internal static class Vents
{
    /// <summary>All slots.</summary>
    public static IEnumerable<FeatureContribution> Of(HousingPlan plan)
    {
        for (int i = 0; i < plan.Vents.Length; i++)
        {
            yield return FeatureContribution.Cuts(
                PartNames.Tub,
                Shapes.Extrude(plan.Vents[i].Outline, -FeatureContribution.Overlap, plan.Stack.FloorTop + FeatureContribution.Overlap)
                    .Tagged(FaceNames.Tag(FaceFeature.Vent, i)));
        }
    }
}
