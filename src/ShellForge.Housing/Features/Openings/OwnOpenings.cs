using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features.Openings;

/// <content>For a purpose of the maker's own: one cut straight through.</content>
internal sealed partial class OpeningBodies
{
    /// <inheritdoc />
    public IEnumerable<FeatureContribution> WallOpening(WallOpeningPlan opening)
    {
        yield return FeatureContribution.Cuts(PartNames.Tub, Shapes
            .Extrude(opening.Outline, opening.WallInner - PastWall, opening.WallFace + PastWall)
            .Moved(OutwardFrame.Facing(opening.Faces)).Tagged(FaceNames.Tag(FaceFeature.Port, number)));
    }

    /// <inheritdoc />
    public IEnumerable<FeatureContribution> FloorOpening(FloorOpeningPlan opening)
    {
        yield return FeatureContribution.Cuts(PartNames.Tub, Shapes
            .Extrude(opening.Outline, -PastWall, opening.FloorTop + PastWall).Tagged(FaceNames.Tag(FaceFeature.Port, number)));
    }

    /// <inheritdoc />
    public IEnumerable<FeatureContribution> FrontOpening(FrontOpeningPlan opening)
    {
        // Through the bezel, and through whatever of the diffuser lies behind it or in the window.
        foreach (string part in new[] { PartNames.Cover, PartNames.Diffuser })
        {
            yield return FeatureContribution.Cuts(part, Shapes
                .Extrude(opening.Outline, opening.CutFrom - FeatureContribution.Overlap, opening.Front + PastWall)
                .Tagged(FaceNames.Tag(FaceFeature.Port, number)));
        }
    }
}
