namespace ShellForge.Physics.Power;

/// <summary>What draws current and what gives it. Currents in A, volts in V.</summary>
public sealed record PowerInput
{
    /// <summary>How many LEDs.</summary>
    public required int Leds { get; init; }

    /// <summary>All LEDs at full white, with dies of the usual kind, A.</summary>
    public required double FullWhiteAmps { get; init; }

    /// <summary>All LEDs at full white, with the strongest dies that ship under the name, A: wires and supplies are chosen by it.</summary>
    public required double StrongestAmps { get; init; }

    /// <summary>All LEDs dark, A.</summary>
    public required double IdleAmps { get; init; }

    /// <summary>Controller and other parts, A.</summary>
    public required double OtherAmps { get; init; }

    /// <summary>Share of full white, 0 to 1.</summary>
    public required double Brightness { get; init; }

    /// <summary>Share of time that LEDs are lit over an animation, 0 to 1: counts for the mean, not for the peak.</summary>
    public double Duty { get; init; } = 1;

    /// <summary>What the supply gives in continuous use, A.</summary>
    public required double SupplyAmps { get; init; }

    /// <summary>What the connector's contacts carry, A; infinity without a connector.</summary>
    public double ContactAmps { get; init; } = double.PositiveInfinity;

    /// <summary>LEDs on the longest ring.</summary>
    public required int RingLeds { get; init; }

    /// <summary>Places at which that ring is fed, at least 1.</summary>
    public int Feeds { get; init; } = 1;

    /// <summary>
    /// Segments between the two neighbouring feeds that lie farthest apart, round the ring; null: the feeds are evenly spread.
    /// </summary>
    public int? WidestArc { get; init; }

    /// <summary>Trace between two LEDs, supply and return together, ohm.</summary>
    public double SegmentOhms { get; init; } = PowerModel.TypicalSegmentOhms;
}
