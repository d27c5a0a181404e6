using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Outlines;

namespace ShellForge.Planning.SecondBoards;

/// <summary>
/// What holds a second board on the tub's floor, whatever its place. On posts under its holes, or on seats at its rim with walls round
/// them, between which clips stand or under which a strap goes through:
/// <code>
///    ┬ screw                     hook                       strap
///  ══╪════════ board    █ ╲█════════ board         █ ════════ board
///    █                  █─┐ █                      █─┐    ┌──────
///    █ post             █ │ █ clip                 █ │ slot
///  ──────── floor ──────────────────────────────────────────────
/// </code>
/// </summary>
public sealed record SecondBoardSize
{
    /// <summary>The board.</summary>
    public required SecondBoardSpec Board { get; init; }

    /// <summary>How it is held; never left open.</summary>
    public required SecondBoardHold Hold { get; init; }

    /// <summary>From the floor's inner face to the board's underside, mm: whole layers.</summary>
    public required double Lift { get; init; }

    /// <summary>From the floor's inner face to the air over all that stands on the board, mm.</summary>
    public required double Depth { get; init; }

    /// <summary>What asks for <see cref="Lift"/>.</summary>
    public required string LiftFor { get; init; }

    /// <summary>Gap between the board's edge and the walls of its seats, mm.</summary>
    public double Gap { get; init; }

    /// <summary>Thickness of those walls, mm.</summary>
    public double Wall { get; init; }

    /// <summary>How far the seats reach under the board's edge, mm.</summary>
    public double SeatReach { get; init; }

    /// <summary>Length of a seat along either side of a corner, mm.</summary>
    public double SeatLength { get; init; }

    /// <summary>Diameter of the posts under its holes, mm.</summary>
    public double PostDiameter { get; init; }

    /// <summary>Clips; null where none hold it.</summary>
    public SecondBoardClips? Clips { get; init; }

    /// <summary>The strap's way; null where none holds it.</summary>
    public SecondBoardStrap? Strap { get; init; }

    /// <summary>Width of the wires that leave it side by side, mm; 0 for none.</summary>
    public double WireWidth { get; init; }

    /// <summary>Room that their bend takes beside it and over it, mm; 0 for none.</summary>
    public double WireBend { get; init; }

    /// <summary>Whether it lies on seats at its rim.</summary>
    public bool IsSeated => Hold != SecondBoardHold.Screws;

    /// <summary>Direction across the board's shorter side, seen from its own x: where clips stand and a strap lies.</summary>
    public Angle Across => Board.Length >= Board.Width ? Angle.FromDegrees(90) : Angle.Zero;

    /// <summary>Half of the board along <see cref="Across"/>, mm.</summary>
    public double HalfAcross => Math.Min(Board.Length, Board.Width) / 2;

    /// <summary>The board in plan, about its middle.</summary>
    public Region Outline => Grown(0);

    /// <summary>Walls round its seats, about its middle.</summary>
    public Region Walls => IsSeated ? Grown(Gap + Wall).Less(Grown(Gap)).Intersect(Corners.And(Bridges)) : Region.Empty;

    /// <summary>The seats under its rim, about its middle; they reach into the walls.</summary>
    public Region Seats => IsSeated ? Grown(Gap + (Wall / 2)).Less(Grown(-SeatReach)).Intersect(Corners) : Region.Empty;

    /// <summary>What nothing else may stand in, about its middle.</summary>
    public Region Taken { get; private init; } = Region.Empty;

    /// <summary>From its middle to the farthest corner of what it takes, mm.</summary>
    public double Reach => Taken.Loops.SelectMany(loop => loop).Max(point => point.Length);

    /// <summary>The same with what it takes worked out.</summary>
    /// <param name="beside">Free round the board, mm.</param>
    /// <param name="iron">Free round a post's axis for the iron, mm.</param>
    internal SecondBoardSize WithTaken(double beside, double iron)
    {
        var parts = ImmutableArray.CreateBuilder<Region>();
        parts.Add(Grown(IsSeated ? Gap + Wall : beside));
        parts.AddRange(IsSeated ? [] : Board.Holes.Select(hole =>
            Region.Disc(hole, Ring.Hole(Math.Max(PostDiameter / 2, iron)))));
        if (Clips is { } clips)
        {
            parts.Add(Along(clips.Width + (2 * beside), HalfAcross + clips.Gap + clips.Thickness + clips.Behind));
        }

        if (Strap is { } strap)
        {
            parts.Add(Along(strap.Gap, HalfAcross + Gap + Wall + strap.Beside));
        }

        if (WireWidth > 0)
        {
            double end = (Board.Length / 2) + (IsSeated ? Gap + Wall : 0) + WireBend;
            parts.Add(Rectangle(end / 2, 0, end, Math.Min(WireWidth, Board.Width)));
        }

        return this with { Taken = Region.Union([.. parts]) };
    }

    /// <summary>The board's outline, larger by so much all round, with sharp corners.</summary>
    internal Region Grown(double by) => Board.Round
        ? Region.Disc(Point2.Origin, new Ring(
            (Board.Length / 2) + by, RingSide.Outside, Ring.CountFor((Board.Length / 2) + by), Angle.Zero))
        : Rectangle(0, 0, Board.Length + (2 * by), Board.Width + (2 * by));

    /// <summary>A strip through its middle along <see cref="Across"/>, so wide, to both sides so far.</summary>
    internal Region Along(double width, double reach) =>
        PartEnvelope.Rectangle(Point2.Origin, 2 * reach, width, Across);

    // Where its walls and seats stand: at its corners, on a disc at four places between its axes.
    private Region Corners
    {
        get
        {
            double outer = Gap + Wall;
            if (Board.Round)
            {
                double radius = (Board.Length / 2) + outer;
                return Region.Union([.. Enumerable.Range(0, 4).Select(i => PartEnvelope.Rectangle(
                    Point2.Polar(radius, Angle.FromDegrees(45 + (90 * i))), 2 * SeatLength, 2 * SeatLength,
                    Angle.FromDegrees(45 + (90 * i))))]);
            }

            (double x, double y) = ((Board.Length / 2) + outer, (Board.Width / 2) + outer);
            double half = SeatLength / 2;
            return Region.Union([.. new[] { (1, 1), (-1, 1), (-1, -1), (1, -1) }.Select(sign =>
                Rectangle(sign.Item1 * (x - half), sign.Item2 * (y - half), SeatLength, SeatLength))]);
        }
    }

    // Where the walls carry a strap.
    private Region Bridges => Strap is { } strap
        ? Along(strap.Gap + (2 * strap.Leg), HalfAcross + Gap + Wall + 1).Less(Along(strap.Gap + (2 * strap.Leg), HalfAcross / 2))
        : Region.Empty;

    private static Region Rectangle(double x, double y, double length, double width) =>
        PartEnvelope.Rectangle(new Point2(x, y), length, width, Angle.Zero);
}

/// <summary>Two clips at the middle of a second board's longer sides.</summary>
/// <param name="Gap">From the board's edge to a clip's post, mm.</param>
/// <param name="Thickness">Of a post, mm.</param>
/// <param name="Width">Along the edge, mm.</param>
/// <param name="Behind">Room that a post bends into, mm.</param>
/// <param name="Reach">Of a hook over the board's edge, mm.</param>
/// <param name="Play">From the board's upper face to the hooks, mm.</param>
public sealed record SecondBoardClips(double Gap, double Thickness, double Width, double Behind, double Reach, double Play)
{
    /// <summary>The hook's tip is flat over this height, mm: two layers.</summary>
    public const double Tip = 0.4;

    /// <summary>From the board's upper face to a hook's top, mm.</summary>
    public double Rise => Play + (2 * Reach) + Gap + Tip;
}

/// <summary>A strap's way across a second board.</summary>
/// <param name="Tie">Whether a cable tie does it; else a hook-and-loop strap.</param>
/// <param name="Gap">Width of its slots in the walls, mm.</param>
/// <param name="Slot">Height of them over the floor, mm.</param>
/// <param name="Roof">Width of their level roof, mm: it is bridged.</param>
/// <param name="Rise">From their side walls' top to that roof, mm.</param>
/// <param name="Leg">Wall beside a slot, mm.</param>
/// <param name="Beside">Free beside the walls, where it runs, mm.</param>
public sealed record SecondBoardStrap(bool Tie, double Gap, double Slot, double Roof, double Rise, double Leg, double Beside);
