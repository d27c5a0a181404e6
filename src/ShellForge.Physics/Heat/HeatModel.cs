using System.Collections.Immutable;

namespace ShellForge.Physics.Heat;

/// <summary>A body's steady temperature.</summary>
/// <param name="Name">Leds, controller, board, inner air, or a wall's inside and outside.</param>
/// <param name="Celsius">Temperature.</param>
/// <param name="PlusMinus">What the coefficients' ranges make of it, K.</param>
public readonly record struct NodeTemperature(string Name, double Celsius, double PlusMinus);

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
    public NodeTemperature this[string name] => Nodes.First(node => node.Name == name);

    /// <summary>Whether there is such a body.</summary>
    public bool Has(string name) => Nodes.Any(node => node.Name == name);

    /// <summary>The warmest place where the housing's plastic is: inner faces of walls, and the board, on which posts and baffle lie.</summary>
    public NodeTemperature WarmestPlastic => Nodes
        .Where(node => node.Name == "board" || node.Name.EndsWith(" inside", StringComparison.Ordinal)).MaxBy(node => node.Celsius);
}

/// <summary>
/// Steady heat of a housing and how it gets there. Posts and wires carry away a little more than is counted, so it errs on the warm
/// side; sunshine, covers and other lamps are not counted.
/// </summary>
public static class HeatModel
{
    // Warm-up: steps and end, s. Half a minute is short against any housing's time constant.
    private const double Step = 30;
    private const int MostSteps = 960;
    private const double NearlyWarm = 0.995;

    private static readonly double[] ToldMinutes = [0, 1, 2, 5, 10, 15, 20, 30, 45, 60, 90, 120, 180, 240, 360, 480];

    /// <summary>Temperatures of a housing.</summary>
    public static HeatResult Of(HeatInput input, HeatCoefficients coefficients)
    {
        var housing = new HousingNetwork(input, coefficients);
        double[] steady = housing.Network.SteadyAt(input.AmbientCelsius);
        double[] spread = Spread(input, coefficients, steady);
        double heat = (coefficients.HeatShare.Value * input.LedWatts) + input.ControllerWatts + input.OtherWatts;
        (ImmutableArray<WarmUpPoint> curve, double ninety) = WarmUp(housing, input.AmbientCelsius, steady);
        return new HeatResult
        {
            Nodes = [.. steady.Select((t, i) => new NodeTemperature(housing.Network.NameOf(i), t, spread[i]))],
            HeatWatts = heat,
            LeavingWatts = housing.Network.ToOutside(steady, input.AmbientCelsius),
            WarmUp = curve,
            MinutesToNinetyPercent = ninety,
        };
    }

    /// <summary>Steady temperature of the inner air, degrees Celsius.</summary>
    public static double AirCelsius(HeatInput input, HeatCoefficients coefficients)
    {
        var housing = new HousingNetwork(input, coefficients);
        return housing.Network.SteadyAt(input.AmbientCelsius)[housing.Air];
    }

    /// <summary>The largest brightness at which a judgement of the temperatures still holds, in steps of 0.005; 0 when none is.</summary>
    /// <param name="input">The housing.</param>
    /// <param name="coefficients">Coefficients.</param>
    /// <param name="holds">The judgement; false for all warmer states once it is false.</param>
    public static double LargestBrightness(HeatInput input, HeatCoefficients coefficients, Func<HeatResult, bool> holds)
    {
        const int steps = 200;
        int low = 0;
        int high = steps + 1;
        while (high - low > 1)
        {
            int middle = (low + high) / 2;
            if (holds(SteadyOnly(input with { Brightness = middle / (double)steps }, coefficients)))
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return low / (double)steps;
    }

    private static HeatResult SteadyOnly(HeatInput input, HeatCoefficients coefficients)
    {
        var housing = new HousingNetwork(input, coefficients);
        double[] steady = housing.Network.SteadyAt(input.AmbientCelsius);
        return new HeatResult
        {
            Nodes = [.. steady.Select((t, i) => new NodeTemperature(housing.Network.NameOf(i), t, 0))],
            HeatWatts = 0,
            LeavingWatts = 0,
            WarmUp = [],
            MinutesToNinetyPercent = 0,
        };
    }

    // Each coefficient by itself to both ends of its range; independent errors add as squares.
    private static double[] Spread(HeatInput input, HeatCoefficients coefficients, double[] steady)
    {
        double[] squares = new double[steady.Length];
        foreach ((_, Coefficient coefficient, Func<double, HeatCoefficients> with) in coefficients.Each())
        {
            double[] low = new HousingNetwork(input, with(coefficient.Low)).Network.SteadyAt(input.AmbientCelsius);
            double[] high = new HousingNetwork(input, with(coefficient.High)).Network.SteadyAt(input.AmbientCelsius);
            for (int i = 0; i < squares.Length; i++)
            {
                double off = Math.Max(Math.Abs(low[i] - steady[i]), Math.Abs(high[i] - steady[i]));
                squares[i] += off * off;
            }
        }

        return [.. squares.Select(Math.Sqrt)];
    }

    private static (ImmutableArray<WarmUpPoint> Curve, double Ninety) WarmUp(HousingNetwork housing, double ambient, double[] steady)
    {
        double[] t = [.. steady.Select(_ => ambient)];
        double rise = steady[housing.Board] - ambient;
        var curve = ImmutableArray.CreateBuilder<WarmUpPoint>();
        double ninety = double.NaN;
        for (int step = 0; step <= MostSteps; step++)
        {
            double minutes = step * Step / 60;
            if (ToldMinutes.Contains(minutes))
            {
                curve.Add(new WarmUpPoint(minutes, t[housing.Air], t[housing.Board]));
            }

            double share = rise > 0 ? (t[housing.Board] - ambient) / rise : 1;
            ninety = double.IsNaN(ninety) && share >= 0.9 ? minutes : ninety;
            if (share >= NearlyWarm && curve.Count > 1)
            {
                break;
            }

            t = housing.Network.After(t, ambient, Step);
        }

        return (curve.ToImmutable(), double.IsNaN(ninety) ? MostSteps * Step / 60 : ninety);
    }
}
