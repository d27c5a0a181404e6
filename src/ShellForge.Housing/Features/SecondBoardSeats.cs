using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;
using ShellForge.Planning.SecondBoards;

namespace ShellForge.Housing.Features;

/// <summary>
/// What holds a second board on the floor beside screws: seats with walls at its rim, clips, and slots for a strap. Its posts for screws
/// stand with all others. Everything opens upwards; only the walls over a strap's slots are bridges.
/// </summary>
internal static class SecondBoardSeats
{
    private const double Overlap = FeatureContribution.Overlap;

    /// <summary>Seats, clips and slots; nothing without a second board, or where screws hold it.</summary>
    public static IEnumerable<FeatureContribution> Of(HousingPlan plan)
    {
        if (plan.SecondBoard is not { Size.IsSeated: true } second)
        {
            yield break;
        }

        FaceTag tag = FaceNames.Tag(FaceFeature.SecondBoard);
        double foot = second.FloorTop - Overlap;
        yield return FeatureContribution.Adds(
            PartNames.Tub, Shapes.Extrude(second.Placed(second.Size.Walls), foot, second.Rim).Tagged(tag));
        yield return FeatureContribution.Adds(
            PartNames.Tub, Shapes.Extrude(second.Placed(second.Size.Seats), foot, second.Seat).Tagged(tag));
        if (second.Size.Strap is { } strap)
        {
            yield return FeatureContribution.Cuts(PartNames.Tub, Slot(second, strap).Tagged(tag));
        }

        if (second.Size.Clips is { } clips)
        {
            foreach ((Point2 edge, Angle outward) in second.ClipPlaces)
            {
                yield return FeatureContribution.Adds(PartNames.Tub, Clip(second, clips, edge, outward, foot).Tagged(tag));
            }
        }
    }

    // Post and hook drawn from the side (outward from the board's edge, z), given their width, and set at their place.
    private static Solid Clip(SecondBoardPlan second, SecondBoardClips clips, Point2 edge, Angle outward, double foot)
    {
        double tip = second.Top + clips.Play + clips.Reach;
        (double near, double far) = (clips.Gap, clips.Gap + clips.Thickness);
        Region side = Region.Polygon(
        [
            new Point2(near, foot), new Point2(far, foot), new Point2(far, second.ClipTop), new Point2(near, second.ClipTop),
            new Point2(-clips.Reach, tip + SecondBoardClips.Tip), new Point2(-clips.Reach, tip),
            new Point2(near, tip - clips.Reach - near),
        ]);
        return Shapes.Extrude(side, -clips.Width / 2, clips.Width / 2)
            .Moved(Transform3.TurnX(Angle.FromDegrees(90)).Then(Transform3.TurnZ(outward)).Then(Transform3.Shift(edge.X, edge.Y, 0)));
    }

    // Through the walls on both sides.
    private static Solid Slot(SecondBoardPlan second, SecondBoardStrap strap) => StrapSlot.Of(
        second.At, second.Turn + second.Size.Across, second.Size.HalfAcross + second.Size.Gap + second.Size.Wall,
        (second.FloorTop, second.FloorTop + strap.Slot, strap.Rise), (strap.Gap, strap.Roof));
}
