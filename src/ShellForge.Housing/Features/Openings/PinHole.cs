using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features.Openings;

/// <content>For a pin: through the floor, with a tube round it where one is planned.</content>
internal sealed partial class OpeningBodies
{
    /// <inheritdoc />
    public IEnumerable<FeatureContribution> PinHole(PinHolePlan opening)
    {
        if (opening.Tube is { } tube)
        {
            yield return FeatureContribution.Adds(PartNames.Tub, Shapes
                .Extrude(tube.Outline(opening.At), Math.Max(0, opening.FloorTop - FeatureContribution.Overlap), tube.Top)
                .Tagged(FaceNames.Tag(FaceFeature.Port, number)));
        }

        yield return FeatureContribution.Cuts(PartNames.Tub, Shapes
            .Extrude(opening.Hole, -PastWall, opening.LedTo + PastWall).Tagged(FaceNames.Tag(FaceFeature.Port, number)));
    }
}
