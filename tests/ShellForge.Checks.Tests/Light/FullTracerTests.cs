using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Physics.Light;
using ShellForge.Testing;
using Xunit.Abstractions;

namespace ShellForge.Checks.Tests.Light;

/// <summary>
/// The light of the shipped samples beside a tracer of all reflections that shares no code with the model. The tracer's noise is not
/// guessed: it runs with several seeds, and what leaving out one of them changes says how far chance takes each figure.
/// </summary>
/// <remarks>
/// What the model is off the tracer at 1.6 million photons, with the tracer's own standard deviation behind it, in per cent:
/// <code>
///                                         tide-lamp, cells     dome-dial, blend
/// straight onto the diffuser                -0.6   0.05           -0.1   0.06
/// seen in front                             -1.0   0.3            -0.6   0.09
/// smallest over mean along the circle       -0.8   2.6            +2.2   0.9
/// edge over mean across the window          +0.2   1.3            -0.3   1.0
/// at the next LED's place                   -1.6   0.8            -3.1   0.3
/// </code>
/// All but three are within three deviations or one per cent. Along the LEDs of a blend it is 2 % more even than the tracer, and the next
/// LED's place gets 3 % less of one LED's light in a blend, 2 % less in cells.
/// </remarks>
public class FullTracerTests(ITestOutputHelper output)
{
    private const int Runs = 8;
    private const int PhotonsPerRun = 50_000;

    // So many standard deviations are left to chance.
    private const double Sigmas = 3;

    // Waves in the light along the circle that are compared; what is finer is the tracer's noise.
    private const int Harmonics = 3;

    private static readonly string[] Figures = ["direct", "seen", "along", "across", "next"];

    // What the model itself may be off, as shares: the table above and a little.
    private static readonly Dictionary<string, double[]> OfModelItself = new()
    {
        ["tide-lamp"] = [0.006, 0.011, 0.02, 0.02, 0.02],
        ["dome-dial"] = [0.002, 0.007, 0.022, 0.015, 0.032],
    };

    [Theory]
    [InlineData("tide-lamp")]
    [InlineData("dome-dial")]
    public void The_light_of_a_sample_is_what_photons_make_of_it_but_for_their_noise_and_the_models_own_error(string sample)
    {
        HousingUnderCheck housing = BuiltHousings.Of(WrittenBoard.Sample(sample));
        FullTracer[] runs = [.. Enumerable.Range(1, Runs).Select(seed => Traced(housing, seed))];
        double[] ours = OfModel(housing.Light!.Map, runs[0]);
        double[] traced = Of(runs);
        double[][] without = [.. runs.Select(run => Of([.. runs.Where(other => other != run)]))];
        Assert.All(Figures.Index(), figure =>
        {
            (int k, string name) = figure;
            double model = OfModelItself[sample][k];

            // The jackknife: the spread of what is left without one run, times the runs less one.
            double mean = without.Average(each => each[k]);
            double noise = Math.Sqrt((Runs - 1.0) / Runs * without.Sum(each => Math.Pow(each[k] - mean, 2))) / traced[k];
            double off = (ours[k] / traced[k]) - 1;
            output.WriteLine(FormattableString.Invariant(
                $"{sample} {name}: model {ours[k]:0.0000}, tracer {traced[k]:0.0000}, off {100 * off:0.0} %, sigma {100 * noise:0.00} %"));
            Assert.InRange(off, -model - (Sigmas * noise), model + (Sigmas * noise));
        });
    }

    private static FullTracer Traced(HousingUnderCheck housing, int seed)
    {
        var tracer = new FullTracer(housing, seed, housing.Board.Board.PixelCircles[0].Led.BodyReflectance);
        tracer.Run(PhotonsPerRun);
        return tracer;
    }

    // The figures of several runs together: shares that come straight and that are seen, smallest over mean along the circle, the edge
    // across the window, and light at the next LED's place over that at its own.
    private static double[] Of(FullTracer[] runs)
    {
        double[] apart = Mean(runs, run => run.Apart);
        return
        [
            runs.Average(run => run.Direct), runs.Average(run => run.Seen), Least(Mean(runs, run => run.Along)),
            Edge(Mean(runs, run => run.Across)), (apart[1] + apart[^1]) / 2 / apart[0],
        ];
    }

    private static double[] Mean(FullTracer[] runs, Func<FullTracer, double[]> of) =>
        [.. Enumerable.Range(0, of(runs[0]).Length).Select(i => runs.Average(run => of(run)[i]))];

    private static double[] OfModel(LightMap map, FullTracer places)
    {
        (double[] along, double[] across, double next) = Ours(map, places);
        return [map.DirectShare, map.SeenShare, Least(along), Edge(across), next];
    }

    // Smallest over mean of the first waves of what repeats from LED to LED and looks the same from both sides.
    private static double Least(double[] along)
    {
        double mean = along.Average();
        double[] waves = [.. Enumerable.Range(1, Harmonics).Select(k => 2 * along.Select((light, i) =>
            light * Math.Cos(2 * Math.PI * k * (i + 0.5) / along.Length)).Average())];
        return Enumerable.Range(0, 100)
            .Min(i => 1 + waves.Select((wave, k) => wave / mean * Math.Cos(2 * Math.PI * (k + 1) * i / 100)).Sum());
    }

    // The outermost half millimetre on both sides over the mean.
    private static double Edge(double[] across) => (across[0] + across[^1]) / 2 / across.Average();

    private static (double[] Along, double[] Across, double Next) Ours(LightMap map, FullTracer tracer)
    {
        var along = new List<double>[FullTracer.PlacesAlong];
        var across = new List<double>[FullTracer.PlacesAcross];
        double own = 0;
        double next = 0;
        for (int i = 0; i < map.Face.Count; i++)
        {
            if (!map.Face.IsOpen(i))
            {
                continue;
            }

            Point2 at = map.Face.Middle(i);
            (double share, int apart) = tracer.Place(at, 0);
            if (tracer.IsAlong(at))
            {
                (along[(int)(share * FullTracer.PlacesAlong)] ??= []).Add(map.Seen.All[i]);
            }

            double place = (at.Length - tracer.Window.Inner) / (tracer.Window.Outer - tracer.Window.Inner);
            (across[Math.Clamp((int)(place * FullTracer.PlacesAcross), 0, FullTracer.PlacesAcross - 1)] ??= []).Add(map.Seen.All[i]);
            own += apart == 0 ? map.Seen.Alone[i] : 0;
            next += apart == 1 ? map.Seen.Alone[i] : 0;
        }

        return ([.. along.Select(cells => cells.Average())], [.. across.Select(cells => cells.Average())], next / own);
    }
}
