using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Description;

/// <summary>Cells or pouches in the housing, side by side.</summary>
public sealed record BatterySpec
{
    /// <summary>What leads say that go to it.</summary>
    public const string WireWord = "battery";

    /// <summary>What it is called: a profile's name, or its sizes.</summary>
    public required string Name { get; init; }

    /// <summary>Cylinder or pouch.</summary>
    public required BatteryForm Form { get; init; }

    /// <summary>Diameter of a cylinder or thickness of a new pouch, at most, mm.</summary>
    public required double Thickness { get; init; }

    /// <summary>Width of a pouch at most, mm; the diameter of a cylinder.</summary>
    public required double Width { get; init; }

    /// <summary>Length at most, without wires, mm.</summary>
    public required double Length { get; init; }

    /// <summary>Mass of one, g.</summary>
    public required double Grams { get; init; }

    /// <summary>Whether it holds lithium.</summary>
    public required bool Lithium { get; init; }

    /// <summary>Warmest air that it may lie in, degrees Celsius.</summary>
    public required double WarmestCelsius { get; init; }

    /// <summary>How many lie side by side.</summary>
    public int Count { get; init; } = 1;

    /// <summary>Middle of the bay, mm from the board's centre; null: the plan looks for a place.</summary>
    public Point2? At { get; init; }

    /// <summary>Direction of their length as a board angle; null: the plan chooses.</summary>
    public Angle? Along { get; init; }

    /// <summary>What holds them down.</summary>
    public StrapKind Strap { get; init; }

    /// <summary>Designator of the connector on the board that takes their plug; null for soldered wires.</summary>
    public string? PlugRef { get; init; }
}

/// <summary>What holds a battery in its bay.</summary>
public enum StrapKind
{
    /// <summary>A strap that hooks into itself and opens again.</summary>
    HookAndLoop,

    /// <summary>A cable tie, which is cut to take the battery out.</summary>
    Tie,
}
