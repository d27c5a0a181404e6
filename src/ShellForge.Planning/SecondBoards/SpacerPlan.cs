using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Planning.SecondBoards;

/// <summary>A threaded spacer between the LED board and a second board behind it, with a screw from either side.</summary>
public sealed record SpacerPlan
{
    /// <summary>Name of the LED board's hole that it stands at.</summary>
    public required string Hole { get; init; }

    /// <summary>Its axis.</summary>
    public required Point2 At { get; init; }

    /// <summary>The screws of its thread.</summary>
    public required ScrewProfile Screw { get; init; }

    /// <summary>Its length, mm.</summary>
    public required double Length { get; init; }

    /// <summary>Over its corners, mm.</summary>
    public required double Diameter { get; init; }

    /// <summary>Stock length of the screw from the front, through the LED board, mm.</summary>
    public required double FrontScrew { get; init; }

    /// <summary>Stock length of the screw from behind, through the second board, mm.</summary>
    public required double BackScrew { get; init; }
}
