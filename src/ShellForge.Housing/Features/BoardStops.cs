using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features;

/// <summary>Posts under the cover that end above a board without holes.</summary>
internal static class BoardStops
{
    /// <summary>The posts; nothing where something else keeps the board down.</summary>
    public static IEnumerable<FeatureContribution> Of(HousingPlan plan)
    {
        double inside = plan.Stack.Front - plan.Cover.BezelThickness;
        for (int i = 0; i < plan.Hold.Stops.Length; i++)
        {
            yield return FeatureContribution.Adds(
                PartNames.Cover,
                Shapes.Extrude(plan.Hold.Stops[i].Outline, plan.Hold.StopBottom, inside + FeatureContribution.Overlap)
                    .Tagged(FaceNames.Tag(FaceFeature.BoardStop, i)));
        }
    }
}
