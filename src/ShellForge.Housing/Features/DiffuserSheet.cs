using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features;

/// <summary>The diffuser: a plate of the cover, a body printed into it with a lap, or a sheet of its own behind the bezel.</summary>
internal static class DiffuserSheet
{
    /// <summary>The diffuser's bodies, and what they take from the cover.</summary>
    public static IEnumerable<FeatureContribution> Of(HousingPlan plan)
    {
        const double overlap = FeatureContribution.Overlap;
        DiffuserPlan diffuser = plan.Diffuser;
        double inner = plan.Stack.DiffuserInner;
        double outer = plan.Stack.DiffuserOuter;
        Geometry.Solids.FaceTag tag = FaceNames.Tag(FaceFeature.Diffuser);
        if (plan.Cover.Window.IsEmpty)
        {
            yield break;
        }

        switch (diffuser.Fit)
        {
            case DiffuserFit.OneWithCover:
                Region plate = plan.Cover.Window.Offset(overlap).Intersect(plan.Cover.Footprint);
                yield return FeatureContribution.Adds(PartNames.Cover, Shapes.Extrude(plate, inner, outer).Tagged(tag));
                break;
            case DiffuserFit.PrintedIn:
                Solid body = Shapes.Extrude(diffuser.Outline, inner, outer);
                if (diffuser.Lap is LapPlan lap)
                {
                    Region inWindow = lap.Outline.Intersect(diffuser.Outline);
                    body = Solid.Union(
                        body,
                        Shapes.Extrude(lap.Outline, inner - lap.Thickness, inner),
                        Shapes.Extrude(inWindow, inner - lap.Thickness, inner + overlap));
                    yield return FeatureContribution.Cuts(
                        PartNames.Cover, Shapes.Extrude(lap.Outline, inner - lap.Thickness, inner).Tagged(tag));
                }

                yield return FeatureContribution.Adds(PartNames.Diffuser, body.Tagged(tag));
                break;
            case DiffuserFit.DropIn:
                yield return FeatureContribution.Adds(PartNames.Diffuser, Shapes.Extrude(diffuser.Outline, inner, outer).Tagged(tag));
                double leg = Math.Min(plan.Shell.BedChamfer, diffuser.Thickness / 2);
                foreach (Solid cutter in BedChamfers.OfBody(diffuser.Outline, outer, leg, towardsViewer: true))
                {
                    yield return FeatureContribution.Cuts(PartNames.Diffuser, cutter.Tagged(FaceNames.Tag(FaceFeature.BedChamfer)));
                }

                break;
            default:
                break;
        }

        if (diffuser.Fit is DiffuserFit.DropIn or DiffuserFit.CutSheet)
        {
            foreach (Solid cutter in WindowEdges(plan))
            {
                yield return FeatureContribution.Cuts(PartNames.Cover, cutter.Tagged(FaceNames.Tag(FaceFeature.BedChamfer)));
            }
        }
    }

    // An open window's edge lies on the bed too.
    private static IEnumerable<Solid> WindowEdges(HousingPlan plan)
    {
        Region bezel = plan.Cover.Footprint.Less(plan.Cover.Window);
        Region face = plan.Cover.Footprint;
        foreach (var loop in bezel.Loops.Where(loop => !face.Loops.Any(edge => edge.AsSpan().SequenceEqual(loop.AsSpan()))))
        {
            Region alone = Region.Polygon(loop);
            bool isHole = plan.Cover.Window.Contains(Inside(alone));
            Region body = isHole ? alone.Offset(2 * plan.Shell.Wall).Less(alone) : alone;
            double leg = Math.Min(plan.Shell.BedChamfer, plan.Cover.BezelThickness / 2);
            IEnumerable<Solid> cutters = BedChamfers.OfBody(body, plan.Stack.Front, leg, towardsViewer: true);
            foreach (Solid cutter in isHole ? cutters.Skip(1) : cutters)
            {
                yield return cutter;
            }
        }
    }

    // A point just inside a simple outline: beside the middle of its first side.
    private static Geometry.Numerics.Point2 Inside(Region region)
    {
        const double step = 0.05;
        var loop = region.Loops[0];
        Geometry.Numerics.Point2 along = loop[1] - loop[0];
        Geometry.Numerics.Point2 left = new(-along.Y, along.X);
        return (0.5 * (loop[0] + loop[1])) + ((step / left.Length) * left);
    }
}
