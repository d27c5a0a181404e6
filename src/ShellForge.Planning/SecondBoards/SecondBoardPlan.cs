using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Planning.SecondBoards;

/// <summary>A second board in its place on the tub's floor.</summary>
public sealed record SecondBoardPlan
{
    /// <summary>What holds it.</summary>
    public required SecondBoardSize Size { get; init; }

    /// <summary>Its middle.</summary>
    public required Point2 At { get; init; }

    /// <summary>Direction of its own x; its wires leave at that end.</summary>
    public required Angle Turn { get; init; }

    /// <summary>z of the floor's inner face.</summary>
    public required double FloorTop { get; init; }

    /// <summary>z of its underside.</summary>
    public required double Seat { get; init; }

    /// <summary>z up to which the walls round its seats rise: its upper face.</summary>
    public required double Rim { get; init; }

    /// <summary>z of the clips' posts, whole layers; 0 without clips.</summary>
    public double ClipTop { get; init; }

    /// <summary>What it is.</summary>
    public SecondBoardSpec Board => Size.Board;

    /// <summary>z of its upper face.</summary>
    public double Top => Seat + Board.Thickness;

    /// <summary>z of the highest thing on it.</summary>
    public double Highest => Top + Board.Above;

    /// <summary>z of the lowest thing under it.</summary>
    public double Lowest => Seat - Board.Below;

    /// <summary>Its middle at the height of its laminate.</summary>
    public Point3 Middle => new(At.X, At.Y, (Seat + Top) / 2);

    /// <summary>The board in plan.</summary>
    public Region Outline => Placed(Size.Outline);

    /// <summary>What nothing else may stand in.</summary>
    public Region Taken => Placed(Size.Taken);

    /// <summary>Its screw holes.</summary>
    public ImmutableArray<Point2> Holes => [.. Board.Holes.Select(Placed)];

    /// <summary>Edges of the board at which clips stand, with the direction away from it.</summary>
    public ImmutableArray<(Point2 Edge, Angle Outward)> ClipPlaces => Size.Clips is null ? [] :
    [
        .. new[] { Size.Across, Size.Across + Angle.FromDegrees(180) }.Select(way =>
            (Placed(Point2.Polar(Size.HalfAcross, way)), (way + Turn).Normalized)),
    ];

    /// <summary>Where its wires leave, in plan.</summary>
    public Point2 WireEnd => Placed(new Point2(Board.Length / 2, 0));

    /// <summary>A shape about the board's middle at its place.</summary>
    public Region Placed(Region own) => own.IsEmpty ? own : own.Turned(Turn).Moved(At);

    /// <summary>A place counted from the board's middle.</summary>
    public Point2 Placed(Point2 own) => Lattice.Snap(At + own.Turned(Turn));
}
