using System.Collections.Immutable;

namespace ShellForge.Physics.Heat;

/// <summary>
/// Steady heat of a housing and how it gets there. Heat crosses the gaps by conduction, by air that turns over where a gap is thick enough
/// for it, and by radiation. Posts and wires carry away a little more than is counted, and so does the wall or table behind a covered
/// floor: it errs on the warm side. Sunshine, covers and other lamps are not counted.
/// </summary>
public static class HeatModel
{
    // Warm-up: steps and end, s. Half a minute is short against any housing's time constant.
    private const double Step = 30;
    private const int MostSteps = 960;
    private const double NearlyWarm = 0.995;

    // Largest brightness is found to one part in so many.
    private const int BrightnessSteps = 200;

    private static readonly double[] ToldMinutes = [0, 1, 2, 5, 10, 15, 20, 30, 45, 60, 90, 120, 180, 240, 360, 480];

    /// <summary>Temperatures of a housing.</summary>
    public static HeatResult Of(HeatInput input, HeatCoefficients coefficients)
    {
        var housing = new HousingNetwork(input, coefficients);
        double[] steady = housing.Network.SteadyAt(input.AmbientCelsius);
        (ImmutableArray<WarmUpPoint> curve, double ninety) = WarmUp(housing, input.AmbientCelsius, steady);
        return new HeatResult
        {
            Nodes = HeatSpread.Of(input, coefficients, housing, steady),
            HeatWatts = (coefficients.HeatShare.Value * input.LedWatts) + input.ControllerWatts + input.OtherWatts,
            LeavingWatts = housing.Network.ToOutside(steady, input.AmbientCelsius),
            WarmUp = curve,
            MinutesToNinetyPercent = ninety,
        };
    }

    /// <summary>Steady mean temperature of the inner air, degrees Celsius.</summary>
    public static double AirCelsius(HeatInput input, HeatCoefficients coefficients)
    {
        var housing = new HousingNetwork(input, coefficients);
        double[] steady = housing.Network.SteadyAt(input.AmbientCelsius);
        return HeatSpread.Central(housing, steady).First(node => node.Body == HeatBody.InnerAir).Mean;
    }

    /// <summary>
    /// The largest brightness at which plastic and LEDs stay within their limits even at the upper end of their temperatures' ranges, in
    /// steps of 0.005; 0 when none is.
    /// </summary>
    /// <param name="input">The housing.</param>
    /// <param name="coefficients">Coefficients.</param>
    /// <param name="plasticCelsius">What the plastic bears, degrees Celsius.</param>
    /// <param name="ledCelsius">What the LEDs bear, degrees Celsius.</param>
    public static double LargestBrightness(HeatInput input, HeatCoefficients coefficients, double plasticCelsius, double ledCelsius)
    {
        int low = 0;
        int high = BrightnessSteps + 1;
        IReadOnlyList<HeatCase>? warmer = null;
        double[]? steady = null;
        while (high - low > 1)
        {
            int middle = (low + high) / 2;
            HeatInput at = input with { Brightness = middle / (double)BrightnessSteps };
            var housing = new HousingNetwork(at, coefficients);
            steady = housing.Network.SteadyAt(at.AmbientCelsius, steady);
            warmer ??= HeatSpread.Warmer(at, coefficients, housing, steady);
            ImmutableArray<NodeTemperature> nodes = HeatSpread.Of(at, warmer, housing, steady);
            bool holds =
                nodes.All(node => (!node.Body.TouchesPlastic() || node.High <= plasticCelsius)
                    && (node.Body != HeatBody.Leds || node.High <= ledCelsius));
            low = holds ? middle : low;
            high = holds ? high : middle;
        }

        return low / (double)BrightnessSteps;
    }

    private static (ImmutableArray<WarmUpPoint> Curve, double Ninety) WarmUp(HousingNetwork housing, double ambient, double[] steady)
    {
        double[] t = [.. steady.Select(_ => ambient)];
        double warm = Board(steady);
        double rise = warm - ambient;
        var curve = ImmutableArray.CreateBuilder<WarmUpPoint>();
        double ninety = double.NaN;
        for (int step = 0; step <= MostSteps; step++)
        {
            double minutes = step * Step / 60;
            double board = Board(t);
            if (ToldMinutes.Contains(minutes))
            {
                curve.Add(new WarmUpPoint(minutes, HeatSpread.Central(housing, t).First(node => node.Body == HeatBody.InnerAir).Mean,
                    board));
            }

            double share = rise > 0 ? (board - ambient) / rise : 1;
            ninety = double.IsNaN(ninety) && share >= 0.9 ? minutes : ninety;
            if (share >= NearlyWarm && curve.Count > 1)
            {
                break;
            }

            t = housing.Network.After(t, ambient, Step);
        }

        return (curve.ToImmutable(), double.IsNaN(ninety) ? MostSteps * Step / 60 : ninety);

        double Board(double[] at) => housing.Points.MeanOnBoard(at, housing.Points.Board);
    }
}
