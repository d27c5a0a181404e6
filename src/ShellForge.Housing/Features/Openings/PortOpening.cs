using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features.Openings;

/// <content>For a plug: through the tub's wall, with a recess and, where the opening is a slot, a tongue on the cover.</content>
internal sealed partial class OpeningBodies
{
    /// <inheritdoc />
    public IEnumerable<FeatureContribution> Port(PortPlan opening)
    {
        Transform3 frame = OutwardFrame.Facing(opening.Faces);
        double v = OutwardFrame.Across(opening.Face, opening.Faces);
        Solid Through(bool upsideDown) => Shapes
            .Extrude(Opening(opening, v, upsideDown), opening.WallInner - PastWall, opening.WallFace + PastWall)
            .Moved(frame).Tagged(FaceNames.Tag(FaceFeature.Port, number));
        yield return FeatureContribution.Cuts(PartNames.Tub, Through(upsideDown: false));
        if (opening.Tongue is { } tongue)
        {
            yield return FeatureContribution.Adds(PartNames.Cover, Tongues.Solid(
                plan, tongue, opening.Faces, v, opening.WallInner - PastWall, opening.WallFace + PastWall)
                .Tagged(FaceNames.Tag(FaceFeature.Tongue, number)));
        }
        else if (opening.OpeningTop > plan.Stack.PartingLine)
        {
            yield return FeatureContribution.Cuts(PartNames.Cover, Through(upsideDown: true));
        }

        if (opening.Recess is { } recess)
        {
            Solid Cut(bool upsideDown) => Shapes.Extrude(
                RoofedOpening.Of(
                    new Point2(v, (recess.Bottom + recess.Top) / 2), recess.Width, recess.Top - recess.Bottom, recess.CornerRadius,
                    opening.Roof, upsideDown),
                recess.FaceU, opening.WallFace + PastWall).Moved(frame).Tagged(FaceNames.Tag(FaceFeature.PortRecess, number));
            yield return FeatureContribution.Cuts(PartNames.Tub, Cut(upsideDown: false));
            if (opening.Tongue is not null || recess.Top > plan.Stack.PartingLine)
            {
                yield return FeatureContribution.Cuts(PartNames.Cover, Cut(upsideDown: true));
            }
        }
    }

    private Region Opening(PortPlan port, double v, bool upsideDown)
    {
        double top = port.Tongue is null ? port.OpeningTop : plan.Stack.PartingLine + PastWall;
        var middle = new Point2(v, (port.OpeningBottom + top) / 2);
        return port.Tongue is null
            ? RoofedOpening.Of(middle, port.OpeningWidth, top - port.OpeningBottom, port.OpeningCornerRadius, port.Roof, upsideDown)
            : Region.Rectangle(
                new Point2(v - (port.OpeningWidth / 2), port.OpeningBottom), new Point2(v + (port.OpeningWidth / 2), top));
    }
}
