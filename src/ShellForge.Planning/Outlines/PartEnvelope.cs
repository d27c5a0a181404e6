using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Planning.Outlines;

/// <summary>Something on the board in plan, with how far it reaches from the board face it sits on.</summary>
/// <param name="Ref">Designator.</param>
/// <param name="Outline">Outline in plan.</param>
/// <param name="From">Nearest point to the board face, mm.</param>
/// <param name="To">Farthest point from the board face, mm; null: unknown.</param>
public sealed record PartEnvelope(string Ref, Region Outline, double From, double? To)
{
    /// <summary>Everything that stands on the top side: parts, LEDs, tails of parts on the bottom side.</summary>
    public static ImmutableArray<PartEnvelope> OnTop(CircuitBoard board) => On(board, BoardSide.Top);

    /// <summary>Everything that hangs under the bottom side: parts, tails of LEDs and of parts on the top side.</summary>
    public static ImmutableArray<PartEnvelope> OnBottom(CircuitBoard board) => On(board, BoardSide.Bottom);

    /// <summary>The body of a part in plan.</summary>
    public static Region OutlineOf(BoardPart part) => part.Round
        ? Region.Disc(part.At, new Ring(part.Length / 2, RingSide.Outside, Ring.CountFor(part.Length / 2), Angle.Zero))
        : Rectangle(part.At, part.Length, part.Width, part.Rotation);

    /// <summary>The body of an LED in plan.</summary>
    public static Region OutlineOf(Pixel pixel, PixelCircle circle) =>
        Rectangle(pixel.At, circle.Led.Length, circle.Led.Width, pixel.Rotation);

    /// <summary>A rectangle about its middle, turned.</summary>
    public static Region Rectangle(Point2 middle, double length, double width, Angle turn)
    {
        Point2 along = (length / 2) * Point2.Polar(1, turn);
        Point2 across = (width / 2) * new Point2(-turn.Sin, turn.Cos);
        return Region.Polygon(
        [
            Lattice.Snap(middle - along - across), Lattice.Snap(middle + along - across),
            Lattice.Snap(middle + along + across), Lattice.Snap(middle - along + across),
        ]);
    }

    private static ImmutableArray<PartEnvelope> On(CircuitBoard board, BoardSide side)
    {
        var envelopes = ImmutableArray.CreateBuilder<PartEnvelope>();
        foreach (BoardPart part in board.Parts)
        {
            if (part.Side == side)
            {
                envelopes.Add(new PartEnvelope(part.Ref, OutlineOf(part), part.Lift, part.Height));
            }
            else if (part.JointProtrusion > 0 && OutlineOf(part).Intersect(board.Outline.Region) is { IsEmpty: false } onBoard)
            {
                envelopes.Add(new PartEnvelope(part.Ref, onBoard, 0, part.JointProtrusion));
            }
        }

        foreach (PixelCircle circle in board.PixelCircles)
        {
            double reach = side == BoardSide.Top ? circle.Led.Height : circle.Led.TailLength;
            if (reach > 0)
            {
                envelopes.AddRange(circle.Pixels.Select(p => new PartEnvelope(p.Ref, OutlineOf(p, circle), 0, reach)));
            }
        }

        return envelopes.ToImmutable();
    }
}
