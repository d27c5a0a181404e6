using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Physics.Light;
using ShellForge.Testing;
using Xunit.Abstractions;

namespace ShellForge.Checks.Tests.Light;

/// <summary>The light of the shipped samples beside a tracer of all reflections that shares no code with the model.</summary>
public class FullTracerTests(ITestOutputHelper output)
{
    private const int Photons = 200_000;

    // Waves in the light along the circle that are compared; what is finer is the tracer's noise.
    private const int Harmonics = 3;

    // Two standard deviations of the tracer at that many photons, as shares: of sums over the window, of places along and across it.
    private const double NoiseOfSums = 0.01;
    private const double NoiseOfPlaces = 0.04;

    // What the model may differ by beyond that: its grid and rays, and a sheet that passes one share of whatever direction, where the cloud
    // passes more of what comes square to it.
    private const double Model = 0.03;
    private const double ModelOfSheet = 0.06;
    private const double ModelOfEdge = 0.10;

    [Theory]
    [InlineData("tide-lamp")]
    [InlineData("dome-dial")]
    public void The_light_of_a_sample_is_what_photons_make_of_it_through_all_their_reflections(string sample)
    {
        HousingUnderCheck housing = BuiltHousings.Of(WrittenBoard.Sample(sample));
        var tracer = new FullTracer(housing, 5, housing.Board.Board.PixelCircles[0].Led.BodyReflectance);
        tracer.Run(Photons);
        HousingLight light = housing.Light!;
        (double[] along, double[] across, double next) = Ours(light.Map, tracer);
        double nextTraced = (tracer.Apart[1] + tracer.Apart[^1]) / 2 / tracer.Apart[0];
        (double, double)[] compared =
        [
            (light.Map.DirectShare, tracer.Direct), (light.Map.SeenShare, tracer.Seen), (Least(along), Least(tracer.Along)),
            (Edge(across), Edge(tracer.Across)), (next, nextTraced),
        ];
        output.WriteLine($"{sample}: model and tracer: direct, seen, along, across, next: "
            + string.Join("; ", compared.Select(pair => $"{pair.Item1:0.0000} {pair.Item2:0.0000}")));

        Near(light.Map.DirectShare, tracer.Direct, NoiseOfSums + Model);
        Near(light.Map.SeenShare, tracer.Seen, NoiseOfSums + ModelOfSheet);
        Near(Least(along), Least(tracer.Along), NoiseOfPlaces + ModelOfSheet);
        Near(Edge(across), Edge(tracer.Across), NoiseOfPlaces + ModelOfEdge);
        Assert.InRange(next - nextTraced, -0.02, 0.02);
    }

    private static void Near(double ours, double traced, double slack) => Assert.InRange(ours / traced, 1 - slack, 1 + slack);

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
