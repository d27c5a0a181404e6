using System.Collections.Immutable;

namespace ShellForge.Physics.Heat;

/// <summary>Which way a wall of the housing looks in use.</summary>
public enum FaceDirection
{
    /// <summary>To the side.</summary>
    Upright,

    /// <summary>Up.</summary>
    Up,

    /// <summary>Down.</summary>
    Down,

    /// <summary>Against a wall or a table: it gives off nothing.</summary>
    Covered,
}

/// <summary>A wall of the housing.</summary>
/// <param name="Name">Floor, side, front, bore.</param>
/// <param name="OuterArea">m2, above 0.</param>
/// <param name="InnerArea">m2, above 0.</param>
/// <param name="Thickness">m, above 0.</param>
/// <param name="Conductivity">W/mK, above 0.</param>
/// <param name="Direction">Which way its outer face looks.</param>
/// <param name="Length">Height of an upright face, or the side of a level one, m: what the air runs along.</param>
/// <param name="HeatCapacity">J/K.</param>
public sealed record HousingWall(
    string Name, double OuterArea, double InnerArea, double Thickness, double Conductivity, FaceDirection Direction, double Length,
    double HeatCapacity);

/// <summary>Openings through which warm air leaves and cool air follows.</summary>
/// <param name="InletArea">m2.</param>
/// <param name="OutletArea">m2.</param>
/// <param name="Rise">Height from inlet to outlet, m; 0 when air has no way up.</param>
public readonly record struct VentOpenings(double InletArea, double OutletArea, double Rise);

/// <summary>What heats and cools a housing. Areas in m2, lengths in m, power in W, temperatures in degrees Celsius.</summary>
public sealed record HeatInput
{
    /// <summary>The walls.</summary>
    public required ImmutableArray<HousingWall> Walls { get; init; }

    /// <summary>One face of the board, m2.</summary>
    public required double BoardArea { get; init; }

    /// <summary>J/K.</summary>
    public required double BoardHeatCapacity { get; init; }

    /// <summary>How many LEDs.</summary>
    public required int Leds { get; init; }

    /// <summary>Electric power of all LEDs at full white, W.</summary>
    public required double LedFullWatts { get; init; }

    /// <summary>Electric power of all LEDs when dark, W.</summary>
    public required double LedIdleWatts { get; init; }

    /// <summary>Electric power of the controller, W.</summary>
    public double ControllerWatts { get; init; }

    /// <summary>Electric power of other parts, W: given off on the board.</summary>
    public double OtherWatts { get; init; }

    /// <summary>Share of full white, 0 to 1.</summary>
    public required double Brightness { get; init; }

    /// <summary>Share of time that LEDs are lit over an animation, 0 to 1.</summary>
    public double Duty { get; init; } = 1;

    /// <summary>The surrounding air.</summary>
    public required double AmbientCelsius { get; init; }

    /// <summary>Volume of the inner air, m3.</summary>
    public required double AirVolume { get; init; }

    /// <summary>Vents.</summary>
    public VentOpenings Vents { get; init; }

    /// <summary>Electric power of the LEDs as they are run, W.</summary>
    public double LedWatts => LedIdleWatts + ((LedFullWatts - LedIdleWatts) * Brightness * Duty);

    /// <summary>All electric power inside, W.</summary>
    public double Watts => LedWatts + ControllerWatts + OtherWatts;
}
