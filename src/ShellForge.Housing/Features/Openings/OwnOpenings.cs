using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Outlines;
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
            .Extrude(opening.Outline, -PastWall, opening.FloorTop + PastWall)
            .And(Chamfer(opening.Outline, 0, opening.Chamfer, outward: -1)).Tagged(FaceNames.Tag(FaceFeature.Port, number)));
    }

    /// <inheritdoc />
    public IEnumerable<FeatureContribution> FrontOpening(FrontOpeningPlan opening)
    {
        // Through the bezel, and through whatever of the diffuser lies behind it or in the window.
        foreach (string part in new[] { PartNames.Cover, PartNames.Diffuser })
        {
            yield return FeatureContribution.Cuts(part, Shapes
                .Extrude(opening.Outline, opening.CutFrom - FeatureContribution.Overlap, opening.Front + PastWall)
                .And(Chamfer(opening.Outline, opening.Face, opening.Chamfer, outward: 1))
                .Tagged(FaceNames.Tag(FaceFeature.Port, number)));
        }
    }

    // Along the edge in a face that lies on the bed, 45 degrees, on past the face. Openings bulge everywhere, so that every side moves out.
    private static Solid Chamfer(Region outline, double faceZ, double leg, int outward)
    {
        if (leg <= 0)
        {
            return Solid.Empty;
        }

        const double past = FeatureContribution.Overlap;
        ImmutableArray<Point2> narrow = outline.Loops[0];
        ImmutableArray<Point2> wide = OutlineOffsets.Mitred(narrow, leg + past)!.Value;
        double inside = faceZ - (outward * leg);
        double outside = faceZ + (outward * past);
        return outward > 0 ? Shapes.Loft(narrow, inside, wide, outside) : Shapes.Loft(wide, outside, narrow, inside);
    }
}
