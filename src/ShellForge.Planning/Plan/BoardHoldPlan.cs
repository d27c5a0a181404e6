using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Planning.Plan;

/// <summary>What keeps the board where it lies when the closed housing is turned over, shaken, and a plug is pushed in.</summary>
public sealed record BoardHoldPlan
{
    /// <summary>What keeps it down, to be read after "It is kept down": "by the cover's lip"; null where nothing does.</summary>
    public required string? DownBy { get; init; }

    /// <summary>How far it may rise before it is stopped, mm; 0 where it is held fast or nothing stops it.</summary>
    public required double Rise { get; init; }

    /// <summary>Posts of the cover that end above it; empty where something else keeps it down.</summary>
    public ImmutableArray<BoardStopPlan> Stops { get; init; } = [];

    /// <summary>z of the stops' lower ends.</summary>
    public double StopBottom { get; init; }

    /// <summary>What stops it from turning in its place, to be read after "by"; null where nothing does.</summary>
    public required string? TurnStoppedBy { get; init; }

    /// <summary>How far it may turn to either side before it is stopped; zero where it can't or nothing stops it.</summary>
    public required Angle Turn { get; init; }
}

/// <summary>A post under the cover that ends above the board.</summary>
/// <param name="Outline">In plan; at the rim it grows out of the cover's wall.</param>
/// <param name="Over">The place on the board that it stops.</param>
public sealed record BoardStopPlan(Region Outline, Point2 Over);
