using ShellForge.Formats.Rendering;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Output.Looks;
using ShellForge.Planning.Hands;

namespace ShellForge.Output.Assembly;

/// <summary>Arrows in pictures of steps: upright beside the housing, and round its axis for what is turned.</summary>
internal static class PictureArrows
{
    private const int Corners = 24;

    // Sizes as shares of the housing's radius: thickness of the shaft, of the head, and where an arrow stands.
    private const double Shaft = 0.035;
    private const double Head = 0.09;
    private const double HeadLength = 0.16;
    private const double Beside = 1.16;

    // A curved arrow: its middle, its width, its sweep.
    private const double CurvedAt = 0.62;
    private const double CurvedWidth = 0.09;
    private const double CurvedDegrees = 70;

    private static readonly Rgb Colour = new(205, 84, 12);

    /// <summary>The arrow of a motion; empty for none.</summary>
    /// <param name="motion">How what is held moves.</param>
    /// <param name="at">Direction in which an upright arrow stands.</param>
    /// <param name="radius">Radius of the housing, mm.</param>
    /// <param name="low">z of its lower end.</param>
    /// <param name="high">z of its upper end.</param>
    /// <param name="top">z of a curved one: over what is held.</param>
    public static PicturedPart[] Of(HandMotion motion, Angle at, double radius, double low, double high, double top) => motion switch
    {
        HandMotion.None => [],
        HandMotion.Down => [Straight(at, radius, high, low)],
        HandMotion.Up => [Straight(at, radius, low, high)],
        HandMotion.DownAndClockwise => [Straight(at, radius, high, low), Curved(at, radius, top, clockwise: true)],
        HandMotion.AnticlockwiseAndUp => [Straight(at, radius, low, high), Curved(at, radius, top, clockwise: false)],
        _ => throw new ArgumentOutOfRangeException(nameof(motion), motion, "a motion without an arrow"),
    };

    private static PicturedPart Straight(Angle at, double radius, double from, double to)
    {
        double towards = Math.Sign(to - from);
        double neck = to - (towards * HeadLength * radius);
        Solid upright = Shapes.Revolve(
            [
                new(0, from), new(Shaft * radius, from), new(Shaft * radius, neck), new(Head * radius, neck), new(0, to),
            ],
            Corners, Angle.Zero, RingSide.Outside);
        Point2 place = Point2.Polar(Beside * radius, at);
        return new PicturedPart(SimpleMesh.Of(upright), Colour) { Placement = Transform3.Shift(place.X, place.Y, 0) };
    }

    // Flat on what is held. Seen by the viewer clockwise is towards smaller angles.
    private static PicturedPart Curved(Angle at, double radius, double z, bool clockwise)
    {
        Angle sweep = Angle.FromDegrees(CurvedDegrees);
        Angle start = at - (0.5 * sweep);
        double inner = (CurvedAt - (CurvedWidth / 2)) * radius;
        double outer = (CurvedAt + (CurvedWidth / 2)) * radius;
        Angle tip = clockwise ? start : start + sweep;
        Point2 along = Point2.Polar(1, tip + Angle.FromDegrees(clockwise ? -90 : 90));
        Point2 middle = Point2.Polar(CurvedAt * radius, tip);
        Point2 across = Point2.Polar(CurvedWidth * radius * 1.3, tip);
        Region head = Region.Polygon(clockwise
            ? [middle - across, middle + (2 * HeadLength * radius * along), middle + across]
            : [middle - across, middle + across, middle + (2 * HeadLength * radius * along)]);
        return new PicturedPart(SimpleMesh.Upright(Region.Sector(inner, outer, start, sweep).And(head), z, z + 1), Colour);
    }
}
