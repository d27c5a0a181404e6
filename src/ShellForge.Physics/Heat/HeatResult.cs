using System.Collections.Immutable;

namespace ShellForge.Physics.Heat;

/// <summary>A body's steady temperature, degrees Celsius.</summary>
/// <param name="Body">The body.</param>
/// <param name="Celsius">Its warmest place, with dies of the usual kind.</param>
/// <param name="Mean">Its mean.</param>
/// <param name="Low">Its warmest place with the weakest dies that ship under the LEDs' name, and as cool as the coefficients' ranges
/// allow.</param>
/// <param name="High">The same with the strongest dies, and as warm as the ranges allow.</param>
public readonly record struct NodeTemperature(HeatBody Body, double Celsius, double Mean, double Low, double High);

/// <summary>A moment while warming up.</summary>
/// <param name="Minutes">Since switching on.</param>
/// <param name="AirCelsius">Inner air.</param>
/// <param name="BoardCelsius">Board.</param>
public readonly record struct WarmUpPoint(double Minutes, double AirCelsius, double BoardCelsius);

/// <summary>Heat of a housing.</summary>
public sealed record HeatResult
{
    /// <summary>Steady temperatures.</summary>
    public required ImmutableArray<NodeTemperature> Nodes { get; init; }

    /// <summary>Heat that stays inside, W.</summary>
    public required double HeatWatts { get; init; }

    /// <summary>Heat that leaves, W: equal to <see cref="HeatWatts"/> but for rounding.</summary>
    public required double LeavingWatts { get; init; }

    /// <summary>From cold to steady.</summary>
    public required ImmutableArray<WarmUpPoint> WarmUp { get; init; }

    /// <summary>Minutes until the board has made 90 % of its rise.</summary>
    public required double MinutesToNinetyPercent { get; init; }

    /// <summary>The temperature of a body.</summary>
    /// <exception cref="InvalidOperationException">There is no such body.</exception>
    public NodeTemperature this[HeatBody body] => Nodes.First(node => node.Body == body);

    /// <summary>Whether there is such a body.</summary>
    public bool Has(HeatBody body) => Nodes.Any(node => node.Body == body);

    /// <summary>
    /// The warmest place where the housing's plastic is: inner faces of walls, and the board, on which posts and baffle lie.
    /// </summary>
    public NodeTemperature WarmestPlastic => Nodes.Where(node => node.Body.TouchesPlastic()).MaxBy(node => node.Celsius);
}
