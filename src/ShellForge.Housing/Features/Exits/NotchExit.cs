using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features.Exits;

/// <content>
/// The notch for a soldered cable: round at its foot, wider above for the tongue that closes it, its edges broken by cones.
/// <code>
///      ██      ██
///      ██ tongue██
///      ████╮ ╭████
///      ████╰─╯████
/// </code>
/// Behind it a bridge on two legs: the cable lies on it, a tie goes under it and round both.
/// </content>
internal sealed partial class CableExits
{
    /// <inheritdoc />
    public IEnumerable<FeatureContribution> Notch(NotchExitPlan exit)
    {
        Transform3 frame = OutwardFrame.Facing(exit.At);
        double radius = exit.NotchWidth / 2;
        var middle = new Point2(0, exit.NotchBottom + radius);
        double above = plan.Stack.PartingLine + PastWall;

        // Turned by half a side, a ring goes over into upright sides without a corner, and its cones meet it side by side.
        int count = Ring.CountFor(radius);
        var narrow = new Ring(radius, RingSide.Outside, count, Angle.FromDegrees(180.0 / count));
        Region profile = Region.Disc(middle, narrow)
            .And(Region.Rectangle(middle - new Point2(radius, 0), new Point2(radius, above)))
            .And(Region.Rectangle(
                new Point2(-exit.Roof.SlotWidth / 2, exit.Roof.Bottom - exit.Roof.Gap), new Point2(exit.Roof.SlotWidth / 2, above)));
        Solid notch = Shapes.Extrude(profile, exit.WallInner - PastWall, exit.WallFace + PastWall);
        if (exit.EdgeChamfer > 0)
        {
            double past = FeatureContribution.Overlap;
            Ring wide = narrow.Coaxial(radius + exit.EdgeChamfer + past, narrow.Side);
            notch = notch.And(
                Shapes.Taper(narrow, exit.WallFace - exit.EdgeChamfer, wide, exit.WallFace + past, middle),
                Shapes.Taper(wide, exit.WallInner - past, narrow, exit.WallInner + exit.EdgeChamfer, middle));
        }

        yield return FeatureContribution.Cuts(PartNames.Tub, notch.Moved(frame).Tagged(Tag(0)));
        yield return FeatureContribution.Adds(PartNames.Cover, Tongues
            .Solid(plan, exit.Roof, exit.At, 0, exit.WallInner - PastWall, exit.WallFace + PastWall)
            .Tagged(FaceNames.Tag(FaceFeature.Tongue, plan.Openings.Length + number)));
        if (exit.TiePost is { } post)
        {
            yield return FeatureContribution.Adds(
                PartNames.Tub, Post(post).Tagged(Tag(NotchExitPlan.PostNumber)));
        }
    }

    private Solid Post(TiePostPlan post)
    {
        double foot = Math.Max(0, plan.Stack.FloorTop - FeatureContribution.Overlap);
        double leg = (post.Length - post.SlotWidth) / 2;
        double off = (post.SlotWidth + leg) / 2;
        return Solid.Union(
            Shapes.Extrude(At(post, -off, leg), foot, post.Top),
            Shapes.Extrude(At(post, off, leg), foot, post.Top),
            Shapes.Extrude(At(post, 0, post.SlotWidth + leg), plan.Stack.FloorTop + post.SlotHeight, post.Top));
    }

    private static Region At(TiePostPlan post, double along, double length) => PartEnvelope.Rectangle(
        post.At + Point2.Polar(along, post.Along), length, post.Width, post.Along);
}
