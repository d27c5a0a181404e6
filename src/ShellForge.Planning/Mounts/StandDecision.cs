using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Mounts;

/// <summary>
/// A stand as a part of its own: a block whose pocket takes the lowest part of the housing, leaning back. Its floor follows the rim, so
/// a round housing can't roll; a lip in front stays below the lit window.
/// </summary>
internal static class StandDecision
{
    // Tilt of the face from the horizontal, footprint depth over height: so that a push at the top does not tip it. Typical.
    private const double TiltDegrees = 70;
    private const double DepthShare = 0.6;

    private const double WidthShare = 0.7;
    private const double HoldShare = 0.3;
    private const double Base = 4.0;
    private const double Gap = 0.4;
    private const double Corner = 4.0;

    // Front lip, mm, and how far it stays below the window.
    private const double LipLeast = 2.0;
    private const double BelowWindow = 0.5;

    // A plug or cable nearer to straight down than this leaves through the stand.
    private const double WayDegrees = 60;
    private const double BesidePlug = 1.5;
    private const double CableBend = 4.0;

    /// <summary>The stand of a housing.</summary>
    public static StandMountPlan Decide(HousingDraft draft, Reasons reasons)
    {
        BoardFile file = draft.File;
        Angle tilt = Angle.FromDegrees(TiltDegrees);
        Angle down = file.Up + Angle.FromDegrees(180);
        Region outline = draft.Shell.Footprint.Filled();
        Angle upright = Angle.FromDegrees(90) - file.Up;
        double below = -outline.Turned(upright).Bounds.Min.Y;
        double above = outline.Turned(upright).Bounds.Max.Y;
        double across = outline.Turned(upright).Bounds.Max.X - outline.Turned(upright).Bounds.Min.X;
        double front = draft.Stack.Front;
        (double baseHeight, Region way) = Way(draft, down, outline);

        double height = baseHeight + ((below + above) * tilt.Sin) + (front * tilt.Cos);
        double depth = reasons.Length("mount.stand.depth", Math.Ceiling(Math.Max(DepthShare * height, front + 20)), Reasons.Rule,
            "0.6 of the height: a push of 2 N at the top does not tip it");
        double width = reasons.Length("mount.stand.width", Math.Ceiling(WidthShare * across), Reasons.Rule, "0.7 of the housing's width");
        double blockHeight = Math.Ceiling(baseHeight + (HoldShare * below) + (front * tilt.Cos));
        reasons.Choice("mount.stand.tilt", $"{Reasons.Mm(TiltDegrees)} degrees", Reasons.Rule, "from the horizontal");

        // Housing frame to stand frame: up to +y, then tilted about x, then the rim onto the base and its weight over the middle.
        double lift = baseHeight + Gap + (below * tilt.Sin);
        double forward = front / 2 * tilt.Sin;
        Transform3 toHousing = Transform3.Shift(0, -forward, -lift)
            .Then(Transform3.TurnX(Angle.Zero - tilt))
            .Then(Transform3.TurnZ(Angle.Zero - upright));
        // Cutters are drawn no farther than the block reaches: a large housing's whole outline, tilted, would leave the domain.
        double rim = Farthest(outline, down);
        double reach = rim - ((blockHeight - baseHeight) / tilt.Sin) - front - Corner;
        Region near = Strips.Along(Point2.Origin, down, across + Corner, reach, rim + Corner);
        return new StandMountPlan
        {
            ToHousing = toHousing,
            Width = width,
            Depth = depth,
            Height = blockHeight,
            CornerRadius = Corner,
            Pocket = outline.Offset(Gap).Intersect(near),
            PocketBack = -Gap,
            PocketFront = front + Gap,
            LipOver = View(draft, outline, down, width).Intersect(near),
            CableWay = way,
            Tilt = tilt,
            BedChamfer = draft.Shell.BedChamfer,
        };
    }

    private static double Farthest(Region region, Angle direction) =>
        region.Loops.SelectMany(loop => loop).Max(point => Point2.Dot(point, Point2.Polar(1, direction)));

    // Everything above the front lip, in the housing's plan.
    private static Region View(HousingDraft draft, Region outline, Angle down, double width)
    {
        double rim = Farthest(outline, down);
        double window = draft.Front.Window.IsEmpty ? 0 : Farthest(draft.Front.Window, down);
        double from = Math.Min(rim - LipLeast, window + BelowWindow);
        return Strips.Along(Point2.Origin, down, width + Corner, -rim, from);
    }

    private static (double Base, Region Way) Way(HousingDraft draft, Angle down, Region outline)
    {
        double rim = outline.Loops.SelectMany(loop => loop).Max(point => point.Length);
        double height = Base;
        Region way = Region.Empty;
        foreach (PortPlan port in draft.Ports.Where(port => Angle.Between(port.Faces, down).Degrees < WayDegrees))
        {
            height = Math.Max(height, Base + port.Mouth.PlugLength);
            way = way.And(Strips.Along(port.Face, port.Faces, port.Mouth.PlugWidth + (2 * BesidePlug), 0,
                port.WallFace - Point2.Dot(port.Face, Point2.Polar(1, port.Faces)) + port.Mouth.PlugLength));
        }

        if (draft.CableExit is CableExitPlan exit && Angle.Between(exit.At, down).Degrees < WayDegrees)
        {
            height = Math.Max(height, Base + (CableBend * exit.CableDiameter));
            way = way.And(Strips.Radial(exit.At, exit.NotchWidth + (2 * BesidePlug), rim / 2, rim + height));
        }

        return (height, way);
    }
}
