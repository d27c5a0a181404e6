namespace ShellForge.Board.Profiles;

/// <summary>A battery's form.</summary>
public enum BatteryForm
{
    /// <summary>A cylinder, which lies on its side.</summary>
    Round,

    /// <summary>A pouch, which lies on its face.</summary>
    Flat,
}

/// <summary>A cell or pouch with the largest sizes that a sound one has when new.</summary>
public sealed record BatteryProfile
{
    /// <summary>Profile name, such as <c>18650</c> or <c>pouch-602040</c>.</summary>
    public required string Name { get; init; }

    /// <summary>Its form.</summary>
    public required BatteryForm Form { get; init; }

    /// <summary>Diameter of a cylinder, or thickness of a pouch, mm.</summary>
    public required Sourced Thickness { get; init; }

    /// <summary>Width of a pouch, mm; the diameter of a cylinder.</summary>
    public required Sourced Width { get; init; }

    /// <summary>Length, mm, over everything that belongs to it but its wires.</summary>
    public required Sourced Length { get; init; }

    /// <summary>Mass, g.</summary>
    public required Sourced Grams { get; init; }

    /// <summary>Whether it holds lithium.</summary>
    public bool Lithium { get; init; } = true;

    /// <summary>Warmest air that it may lie in, degrees Celsius.</summary>
    public required Sourced WarmestCelsius { get; init; }
}
