using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features;

/// <summary>
/// Openings for connectors: through the tub's wall, with a recess and, where the opening is a slot, a tongue on the cover.
/// </summary>
internal static class Ports
{
    private const double PastWall = FeatureContribution.PastWall;

    /// <summary>All ports.</summary>
    public static IEnumerable<FeatureContribution> Of(HousingPlan plan)
    {
        for (int i = 0; i < plan.Ports.Length; i++)
        {
            PortPlan port = plan.Ports[i];
            Transform3 frame = OutwardFrame.Facing(port.Faces);
            double v = OutwardFrame.Across(port.Face, port.Faces);
            Solid opening = Shapes
                .Extrude(Opening(plan, port, v, upsideDown: false), port.WallInner - PastWall, port.WallFace + PastWall)
                .Moved(frame).Tagged(FaceNames.Tag(FaceFeature.Port, i));
            yield return FeatureContribution.Cuts(PartNames.Tub, opening);
            if (port.Tongue is { } tongue)
            {
                yield return FeatureContribution.Adds(PartNames.Cover, Tongues.Solid(
                    plan, tongue, port.Faces, v, port.WallInner - PastWall, port.WallFace + PastWall)
                    .Tagged(FaceNames.Tag(FaceFeature.Tongue, i)));
            }
            else if (port.OpeningTop > plan.Stack.PartingLine)
            {
                yield return FeatureContribution.Cuts(PartNames.Cover, Shapes
                    .Extrude(Opening(plan, port, v, upsideDown: true), port.WallInner - PastWall, port.WallFace + PastWall)
                    .Moved(frame).Tagged(FaceNames.Tag(FaceFeature.Port, i)));
            }

            if (port.Recess is { } recess)
            {
                yield return FeatureContribution.Cuts(PartNames.Tub, Cut(upsideDown: false));
                if (port.Tongue is not null || recess.Top > plan.Stack.PartingLine)
                {
                    yield return FeatureContribution.Cuts(PartNames.Cover, Cut(upsideDown: true));
                }

                Solid Cut(bool upsideDown) => Shapes.Extrude(
                    RoofedOpening.Of(
                        new Point2(v, (recess.Bottom + recess.Top) / 2), recess.Width, recess.Top - recess.Bottom, recess.CornerRadius,
                        port.Roof, upsideDown),
                    recess.FaceU, port.WallFace + PastWall).Moved(frame).Tagged(FaceNames.Tag(FaceFeature.PortRecess, i));
            }
        }
    }

    private static Region Opening(HousingPlan plan, PortPlan port, double v, bool upsideDown)
    {
        double top = port.Tongue is null ? port.OpeningTop : plan.Stack.PartingLine + PastWall;
        var middle = new Point2(v, (port.OpeningBottom + top) / 2);
        return port.Tongue is null
            ? RoofedOpening.Of(middle, port.OpeningWidth, top - port.OpeningBottom, port.OpeningCornerRadius, port.Roof, upsideDown)
            : Region.Rectangle(
                new Point2(v - (port.OpeningWidth / 2), port.OpeningBottom), new Point2(v + (port.OpeningWidth / 2), top));
    }
}
