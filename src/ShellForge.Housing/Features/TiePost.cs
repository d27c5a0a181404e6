using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features;

/// <summary>A bridge on two legs: the cable lies on it, a tie goes under it and round both.</summary>
internal static class TiePost
{
    /// <summary>The post of a tied cable.</summary>
    public static IEnumerable<FeatureContribution> Of(HousingPlan plan)
    {
        if (plan.CableExit?.TiePost is not { } post)
        {
            yield break;
        }

        double foot = Math.Max(0, plan.Stack.FloorTop - FeatureContribution.Overlap);
        double leg = (post.Length - post.SlotWidth) / 2;
        double off = (post.SlotWidth + leg) / 2;
        yield return FeatureContribution.Adds(PartNames.Tub, Solid.Union(
            Shapes.Extrude(At(post, -off, leg), foot, post.Top),
            Shapes.Extrude(At(post, off, leg), foot, post.Top),
            Shapes.Extrude(At(post, 0, post.SlotWidth + leg), plan.Stack.FloorTop + post.SlotHeight, post.Top))
            .Tagged(FaceNames.Tag(FaceFeature.TiePost)));
    }

    private static Region At(TiePostPlan post, double along, double length) => PartEnvelope.Rectangle(
        post.At + Point2.Polar(along, post.Along), length, post.Width, post.Along);
}
