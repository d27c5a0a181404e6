using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Planning.Plan;

/// <summary>What a screw holds.</summary>
public enum ScrewUse
{
    /// <summary>The board.</summary>
    Board,

    /// <summary>The cover.</summary>
    Closure,

    /// <summary>The ring that clamps the board's rim.</summary>
    Clamp,

    /// <summary>A second board on the floor.</summary>
    SecondBoard,
}

/// <summary>A screw in its insert.</summary>
public sealed record ScrewJointPlan
{
    /// <summary>Name for messages: "screw 3".</summary>
    public required string Name { get; init; }

    /// <summary>What it holds.</summary>
    public required ScrewUse Use { get; init; }

    /// <summary>Name of the printed part that it passes; the board's where it passes a board alone.</summary>
    public required string Through { get; init; }

    /// <summary>Whether it holds the LED board in the open tub, before the cover.</summary>
    public bool IsInTub => Use is ScrewUse.Board or ScrewUse.Clamp;

    /// <summary>The boss it enters.</summary>
    public required BossPlan Boss { get; init; }

    /// <summary>The screw.</summary>
    public required ScrewProfile Screw { get; init; }

    /// <summary>Its axis.</summary>
    public required Point2 At { get; init; }

    /// <summary>z of the face under the head (or under the washer).</summary>
    public required double SeatZ { get; init; }

    /// <summary>Whether the head looks to the viewer; otherwise it is driven from behind.</summary>
    public required bool FromFront { get; init; }

    /// <summary>Whether a washer lies under the head.</summary>
    public required bool Washer { get; init; }

    /// <summary>What lies between head and insert, washer included, mm.</summary>
    public required double Clamp { get; init; }

    /// <summary>Stock length, mm.</summary>
    public required double Length { get; init; }

    /// <summary>Thread in the insert, mm.</summary>
    public required double Engagement { get; init; }

    /// <summary>Engagement wanted, mm.</summary>
    public required double EngagementWanted { get; init; }

    /// <summary>From the tip to the bottom of the hole, mm; negative: it bottoms out.</summary>
    public required double TipGap { get; init; }

    /// <summary>Clearance hole as drawn in the printed part it passes, mm; 0 when it passes only the LED board; a second board's own hole.</summary>
    public double PassDiameter { get; init; }

    /// <summary>Counterbore for the head as drawn, mm; 0 for none.</summary>
    public double CounterboreDiameter { get; init; }
}
