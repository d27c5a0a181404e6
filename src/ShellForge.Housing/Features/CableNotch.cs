using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features;

/// <summary>
/// The notch for a soldered cable: round at its foot, wider above for the tongue that closes it, its edges broken by cones.
/// <code>
///      ██      ██
///      ██ tongue██
///      ████╮ ╭████
///      ████╰─╯████
/// </code>
/// </summary>
internal static class CableNotch
{
    private const double PastWall = 0.6;

    /// <summary>Notch and tongue.</summary>
    public static IEnumerable<FeatureContribution> Of(HousingPlan plan)
    {
        if (plan.CableExit is not { } exit)
        {
            yield break;
        }

        Transform3 frame = OutwardFrame.Facing(exit.At);
        double radius = exit.NotchWidth / 2;
        var middle = new Point2(0, exit.NotchBottom + radius);
        double above = plan.Stack.PartingLine + PastWall;
        Region profile = Region.Slot(middle, new Point2(0, above), exit.NotchWidth).And(Region.Rectangle(
            new Point2(-exit.Tongue.SlotWidth / 2, exit.Tongue.Bottom - exit.Tongue.Gap), new Point2(exit.Tongue.SlotWidth / 2, above)));
        Solid notch = Shapes.Extrude(profile, exit.WallInner - PastWall, exit.WallFace + PastWall);
        if (exit.EdgeChamfer > 0)
        {
            double past = FeatureContribution.Overlap;
            Ring narrow = Ring.Hole(radius);
            Ring wide = narrow.Coaxial(radius + exit.EdgeChamfer + past, narrow.Side);
            notch = notch.And(
                Shapes.Taper(narrow, exit.WallFace - exit.EdgeChamfer, wide, exit.WallFace + past, middle),
                Shapes.Taper(wide, exit.WallInner - past, narrow, exit.WallInner + exit.EdgeChamfer, middle));
        }

        yield return FeatureContribution.Cuts(PartNames.Tub, notch.Moved(frame).Tagged(FaceNames.Tag(FaceFeature.CableNotch)));
        yield return FeatureContribution.Adds(PartNames.Cover, Tongues
            .Solid(plan, exit.Tongue, exit.At, 0, exit.WallInner - PastWall, exit.WallFace + PastWall)
            .Tagged(FaceNames.Tag(FaceFeature.Tongue, plan.Ports.Length)));
    }
}
