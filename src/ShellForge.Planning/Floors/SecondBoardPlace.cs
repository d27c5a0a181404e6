using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.SecondBoards;

namespace ShellForge.Planning.Floors;

/// <summary>A place on the floor for a second board, before the heights are decided.</summary>
/// <param name="Size">What holds it.</param>
/// <param name="At">Its middle.</param>
/// <param name="Turn">Direction of its own x.</param>
/// <param name="Hanging">How far what hangs from the LED board over it reaches down, mm; 0 for nothing.</param>
/// <param name="Under">What that is; null for nothing.</param>
internal sealed record SecondBoardPlace(SecondBoardSize Size, Point2 At, Angle Turn, double Hanging, string? Under)
{
    // Tried in so many directions over a whole turn, level and upright ones first.
    private const int Directions = 24;
    private const int Quarter = Directions / 4;

    /// <summary>Least room between floor and LED board over it, mm.</summary>
    public double BelowBoard => Size.Depth + Hanging;

    /// <summary>What it takes of the floor.</summary>
    public Region Taken => Size.Taken.Turned(Turn).Moved(At);

    /// <summary>The second board as something that wants a place.</summary>
    public static FloorBody Body(SecondBoardSize size, Angle up) => new(
        way => size.Taken.Turned(way),
        size.Board.Turn is { } turn ? [turn]
            : [.. Enumerable.Range(0, Directions).Select(i =>
                (up + Angle.FromDegrees((((i % 4) * Quarter) + (i / 4)) * 360.0 / Directions)).Normalized)],
        size.Board.At, size.Reach, size.Taken.Area);
}
