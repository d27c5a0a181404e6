using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features;

/// <summary>Notches in the cover's lower edge for a blade.</summary>
internal static class PryNotches
{
    /// <summary>All notches.</summary>
    public static IEnumerable<FeatureContribution> Of(HousingPlan plan)
    {
        const double overlap = FeatureContribution.Overlap;
        Region outline = plan.Shell.Footprint.Filled();
        double far = Strips.PastRim(outline);
        for (int i = 0; i < plan.PryNotches.Length; i++)
        {
            PryNotchPlan notch = plan.PryNotches[i];
            Region place = Strips.Radial(notch.At, notch.Width, 0, far)
                .Intersect(outline.Offset(overlap).Less(outline.Offset(-notch.Depth)));
            yield return FeatureContribution.Cuts(
                PartNames.Cover,
                Shapes.Extrude(place, plan.Stack.PartingLine - overlap, plan.Stack.PartingLine + notch.Height)
                    .Tagged(FaceNames.Tag(FaceFeature.PryNotch, i)));
        }
    }
}
