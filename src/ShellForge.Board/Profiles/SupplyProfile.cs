namespace ShellForge.Board.Profiles;

/// <summary>A supply of extra-low voltage.</summary>
public sealed record SupplyProfile
{
    /// <summary>Profile name, such as <c>usb-c-1.5A</c>.</summary>
    public required string Name { get; init; }

    /// <summary>Volts at the board.</summary>
    public required Sourced Volts { get; init; }

    /// <summary>Amperes it gives in continuous use.</summary>
    public required Sourced Amps { get; init; }
}
