using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Physics.Light;
using ShellForge.Testing;
using Xunit.Abstractions;

namespace ShellForge.Checks.Tests.Light;

/// <summary>
/// The light of LEDs that lie on no circle about the middle, beside a tracer of all reflections that shares no code with the model, and
/// the height that such light makes a housing.
/// </summary>
public class FieldTracerTests(ITestOutputHelper output)
{
    private const int Photons = 160_000;

    // Two standard deviations of the tracer at that many photons, as shares: of sums over the window, of places in it.
    private const double NoiseOfSums = 0.015;
    private const double NoiseOfPlaces = 0.06;

    // What the model may differ by beyond that, as for samples: its grid and rays.
    private const double Model = 0.01;

    // Places are discs so wide, and a rim so wide, mm.
    private const double Radius = 1.5;
    private const double Rim = 2;

    private static readonly string[] Corners =
    [
        "{at: [-26, -26], diameter: 2.7}", "{at: [26, -26], diameter: 2.7}", "{at: [26, 26], diameter: 2.7}",
        "{at: [-26, 26], diameter: 2.7}",
    ];

    private static WrittenBoard Grid => new()
    {
        Outline = "{polygon: [[-30, -30], [30, -30], [30, 30], [-30, 30]]}",
        Holes = Corners,
        Pixels = "{package: \"5050\", grid: {columns: 4, rows: 4, pitch: 10, first: bottom-left}}",
        Print = "{printer: fdm-0.4-multi-filament, shell: petg-black, diffuser: petg-white}",
    };

    private static WrittenBoard Arc => new()
    {
        Outline = "{arcs: [[50, 0], [76, 0], [0, 76, 90], [0, 50], [50, 0, -90]]}\n  centre: [0, 0]",
        Holes = [],
        Pixels = "{package: \"5050\", circle: 126, count: 9, from: 5, step: 10}",
        Print = "{printer: fdm-0.4-multi-filament, shell: petg-black, diffuser: petg-white}",
    };

    [Theory]
    [InlineData("grid", 10.0)]
    [InlineData("arc", 11.0)]
    public void The_light_of_a_grid_and_an_arc_is_what_photons_make_of_it_through_all_their_reflections(string board, double pitch)
    {
        HousingUnderCheck housing = BuiltHousings.Of((board == "grid" ? Grid : Arc).Read());
        LightMap map = housing.Light!.Map;
        Point2[] leds = [.. housing.Board.Board.PixelCircles.SelectMany(circle => circle.Pixels).Select(pixel => pixel.At)];
        Point2[] middles = [.. leds.SelectMany((a, i) => leds.Skip(i + 1).Where(b => Point2.Distance(a, b) < 1.1 * pitch)
            .Select(b => 0.5 * (a + b)))];
        Region window = housing.Plan.Cover.Window;
        int[] kinds = [.. Enumerable.Range(0, map.Face.Count).Select(i => KindOf(map.Face.Middle(i), leds, middles, window))];
        double[] traced = new double[5];
        var tracer = new FieldTracer(housing);
        tracer.Run(Photons, (at, light) =>
        {
            int cell = map.Face.CellAt(at);
            if (cell >= 0 && map.Face.IsOpen(cell))
            {
                traced[kinds[cell]] += light;
                traced[3] += light;
            }
        });
        double[] ours = new double[5];
        double[] areas = new double[5];
        foreach (int i in Enumerable.Range(0, map.Face.Count).Where(map.Face.IsOpen))
        {
            (ours[kinds[i]], ours[3]) = (ours[kinds[i]] + map.Seen.All[i], ours[3] + map.Seen.All[i]);
            (areas[kinds[i]], areas[3]) = (areas[kinds[i]] + 1, areas[3] + 1);
        }

        // Over the mean of the window: its rim, at LEDs, halfway between them.
        double Of(double[] light, int kind) => light[kind] / areas[kind] / (light[3] / areas[3]);
        output.WriteLine(FormattableString.Invariant(
            $"{board}: model and tracer: direct {map.DirectShare:0.000} {tracer.Direct:0.000}, ")
            + FormattableString.Invariant($"seen {map.SeenShare:0.000} {tracer.Seen:0.000}, ")
            + string.Join(", ", new[] { "rim", "LEDs", "between" }.Select((name, k) => FormattableString.Invariant(
                $"{name} {Of(ours, k):0.000} {Of(traced, k):0.000}"))));
        Near(map.DirectShare, tracer.Direct, NoiseOfSums + Model);
        Near(map.SeenShare, tracer.Seen, NoiseOfSums + Model);
        Assert.All(Enumerable.Range(0, 3), kind => Near(Of(ours, kind), Of(traced, kind), NoiseOfPlaces + Model));
    }

    [Fact]
    public void A_grid_of_four_by_four_at_10_mm_is_soft_in_a_housing_less_than_25_mm_high()
    {
        HousingUnderCheck housing = BuiltHousings.Of(Grid.Read());
        double evenness = housing.Light!.MinimumOverMean!.Value;
        output.WriteLine(FormattableString.Invariant(
            $"front at {housing.Plan.Stack.Front:0.0} mm, smallest over mean {evenness:0.00}"));
        Assert.InRange(housing.Plan.Stack.Front, 10, 25);
        Assert.True(evenness >= housing.Board.Housing.Light.MinimumOverMean, $"{evenness:0.000}");
    }

    private static void Near(double ours, double traced, double slack) => Assert.InRange(ours / traced, 1 - slack, 1 + slack);

    // Places halfway first: those beside the rim count as well.
    private static int KindOf(Point2 at, Point2[] leds, Point2[] middles, Region window) =>
        leds.Any(led => Point2.Distance(led, at) < Radius) ? 1
        : middles.Any(middle => Point2.Distance(middle, at) < Radius) ? 2
        : window.IsNearOutline(at, Rim) ? 0 : 4;
}
