using System.Collections.Immutable;

namespace ShellForge.Physics.Heat;

/// <summary>
/// What the ranges of coefficients and dies make of a housing's temperatures: each by itself to both ends of its range; independent errors
/// add as squares, upward and downward apart.
/// </summary>
internal static class HeatSpread
{
    // A range is told to a tenth of a kelvin at best.
    private const double SteadyEnough = 1e-4;

    /// <summary>Temperatures with their ranges.</summary>
    public static ImmutableArray<NodeTemperature> Of(HeatInput input, HeatCoefficients coefficients, HousingNetwork housing,
        double[] steady) =>
        Of(input, Cases(coefficients), housing, steady);

    /// <summary>Temperatures with their ranges, of given cases only.</summary>
    public static ImmutableArray<NodeTemperature> Of(HeatInput input, IEnumerable<HeatCase> cases, HousingNetwork housing, double[] steady)
    {
        NodeTemperature[] nodes = Central(housing, steady);
        double[] up = new double[nodes.Length];
        double[] down = new double[nodes.Length];
        foreach (HeatCase each in cases)
        {
            NodeTemperature[] moved = Moved(input, each, steady);
            for (int i = 0; i < nodes.Length; i++)
            {
                double off = moved[i].Celsius - nodes[i].Celsius;
                up[i] += off > 0 ? off * off : 0;
                down[i] += off < 0 ? off * off : 0;
            }
        }

        return
        [
            .. nodes.Select((node, i) => node with { Low = node.Celsius - Math.Sqrt(down[i]), High = node.Celsius + Math.Sqrt(up[i]) }),
        ];
    }

    /// <summary>Temperatures without a range.</summary>
    public static NodeTemperature[] Central(HousingNetwork housing, double[] t) =>
    [
        .. housing.Points.Bodies().Select(body =>
        {
            double warmest = body.Points.Max(point => t[point]);
            return new NodeTemperature(body.Body, warmest, HousingPoints.Mean(t, body.Points, i => body.Weights[i]), warmest, warmest);
        }),
    ];

    /// <summary>The cases that make the board or the LEDs warmer.</summary>
    public static IReadOnlyList<HeatCase> Warmer(HeatInput input, HeatCoefficients coefficients, HousingNetwork housing, double[] steady)
    {
        NodeTemperature[] nodes = Central(housing, steady);
        return
        [
            .. Cases(coefficients).Where(each => Moved(input, each, steady).Zip(nodes).Any(pair =>
                pair.First.Body is HeatBody.Board or HeatBody.Leds && pair.First.Celsius > pair.Second.Celsius)),
        ];
    }

    private static NodeTemperature[] Moved(HeatInput input, HeatCase each, double[] steady)
    {
        var other = new HousingNetwork(each.Change(input), each.Coefficients);
        return Central(other, other.Network.SteadyAt(input.AmbientCelsius, steady, SteadyEnough));
    }

    private static IEnumerable<HeatCase> Cases(HeatCoefficients coefficients)
    {
        yield return new HeatCase(input => input with { LedFullWatts = input.LedLeastFullWatts }, coefficients);
        yield return new HeatCase(input => input with { LedFullWatts = input.LedMostFullWatts }, coefficients);
        foreach ((_, Coefficient coefficient, Func<double, HeatCoefficients> with) in coefficients.Each())
        {
            yield return new HeatCase(input => input, with(coefficient.Low));
            yield return new HeatCase(input => input, with(coefficient.High));
        }
    }
}

/// <summary>One end of one range.</summary>
/// <param name="Change">What it makes of the housing.</param>
/// <param name="Coefficients">The coefficients with it.</param>
internal sealed record HeatCase(Func<HeatInput, HeatInput> Change, HeatCoefficients Coefficients);
