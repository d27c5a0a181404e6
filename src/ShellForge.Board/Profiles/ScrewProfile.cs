using System.Collections.Immutable;

namespace ShellForge.Board.Profiles;

/// <summary>The shape of a screw's head.</summary>
public enum ScrewHead
{
    /// <summary>Low, rounded edge, flat seat.</summary>
    Pan,

    /// <summary>Cylinder with a socket, flat seat.</summary>
    Cap,

    /// <summary>Dome with a socket, flat seat.</summary>
    Button,

    /// <summary>Cone of 90 degrees that sits flush; wedges printed plastic apart.</summary>
    Countersunk,
}

/// <summary>A machine screw with its head, the hole it passes and the lengths it is sold in.</summary>
public sealed record ScrewProfile
{
    /// <summary>Profile name, such as <c>m2.5-pan</c>.</summary>
    public required string Name { get; init; }

    /// <summary>Thread, such as <c>M2.5</c>.</summary>
    public required string Thread { get; init; }

    /// <summary>Shape of its head.</summary>
    public ScrewHead Head { get; init; }

    /// <summary>Nominal thread diameter, mm.</summary>
    public required Sourced ThreadDiameter { get; init; }

    /// <summary>Largest head diameter, mm.</summary>
    public required Sourced HeadDiameter { get; init; }

    /// <summary>Largest head height, mm.</summary>
    public required Sourced HeadHeight { get; init; }

    /// <summary>Clearance hole, ISO 273 medium, before the printer's hole allowance, mm.</summary>
    public required Sourced ClearanceHole { get; init; }

    /// <summary>Washer outside diameter, mm.</summary>
    public required Sourced WasherDiameter { get; init; }

    /// <summary>Washer thickness, mm.</summary>
    public required Sourced WasherThickness { get; init; }

    /// <summary>Least thread engagement in brass, mm.</summary>
    public required Sourced EngagementMinimum { get; init; }

    /// <summary>Wanted thread engagement in brass, mm.</summary>
    public required Sourced EngagementDefault { get; init; }

    /// <summary>Lengths sold, mm, rising.</summary>
    public required ImmutableArray<double> StockLengths { get; init; }

    /// <summary>Where the lengths come from.</summary>
    public string StockLengthsSource { get; init; } = "";

    /// <summary>Diameter of the driver bit's envelope above the head, mm.</summary>
    public required Sourced DriverDiameter { get; init; }
}
