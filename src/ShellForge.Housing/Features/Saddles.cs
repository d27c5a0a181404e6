using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features;

/// <summary>Rests under the connectors of modules that are soldered flat, and ribs behind the modules.</summary>
internal static class Saddles
{
    /// <summary>All saddles.</summary>
    public static IEnumerable<FeatureContribution> Of(HousingPlan plan)
    {
        double foot = Math.Max(0, plan.Stack.FloorTop - FeatureContribution.Overlap);
        for (int i = 0; i < plan.Saddles.Length; i++)
        {
            SaddlePlan saddle = plan.Saddles[i];
            if (saddle.Top > plan.Stack.FloorTop && !saddle.Rest.IsEmpty)
            {
                yield return FeatureContribution.Adds(PartNames.Tub, Shapes
                    .Extrude(saddle.Rest, foot, saddle.Top)
                    .Tagged(FaceNames.Tag(FaceFeature.Saddle, i)));
            }

            if (saddle.StopTop > plan.Stack.FloorTop)
            {
                yield return FeatureContribution.Adds(PartNames.Tub, Shapes
                    .Extrude(Rib(saddle), foot, saddle.StopTop)
                    .Tagged(FaceNames.Tag(FaceFeature.Saddle, i)));
            }
        }
    }

    private static Region Rib(SaddlePlan saddle) => PartEnvelope.Rectangle(
        saddle.Face + Point2.Polar(saddle.StopU - (saddle.Rib / 2), saddle.Faces), saddle.Rib,
        saddle.RestMax.Y - saddle.RestMin.Y, saddle.Faces);
}
