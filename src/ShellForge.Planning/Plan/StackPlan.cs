namespace ShellForge.Planning.Plan;

/// <summary>
/// Heights along z, mm, from the outer floor (0) to the front:
/// <code>
///  Front          ─────────────  outer face of bezel and diffuser
///  DiffuserOuter  ─ ─ ─ ─ ─ ─ ─  (equals Front when the diffuser is flush)
///  DiffuserInner  ─────────────
///                    distance
///  LedWindow      ─────────────
///  PartingLine    ─────────────  rim of the tub, seat of the cover (anywhere above the board's bottom)
///  BoardTop       ═════════════
///  BoardBottom    ═════════════  tops of the standoffs
///                   below-board
///  FloorTop       ─────────────
///  0              ─────────────
/// </code>
/// </summary>
public sealed record StackPlan
{
    /// <summary>Inner face of the floor.</summary>
    public required double FloorTop { get; init; }

    /// <summary>Bottom face of the board: the tops of the standoffs.</summary>
    public required double BoardBottom { get; init; }

    /// <summary>Top face of the board.</summary>
    public required double BoardTop { get; init; }

    /// <summary>Rim of the tub.</summary>
    public required double PartingLine { get; init; }

    /// <summary>Light-emitting face of the tallest LED.</summary>
    public required double LedWindow { get; init; }

    /// <summary>Inner face of the diffuser.</summary>
    public required double DiffuserInner { get; init; }

    /// <summary>Outer face of the diffuser.</summary>
    public required double DiffuserOuter { get; init; }

    /// <summary>Outer face of the cover.</summary>
    public required double Front { get; init; }

    /// <summary>What asks for the space between floor and board: "C9".</summary>
    public string BelowBoardFor { get; init; } = "";

    /// <summary>Air that is kept between the floor and what is tallest under the board.</summary>
    public required double BelowParts { get; init; }

    /// <summary>Space between floor and board.</summary>
    public double BelowBoard => BoardBottom - FloorTop;
}
