using FsCheck.Xunit;
using ShellForge.Physics.Heat;

namespace ShellForge.Physics.Tests.Heat;

public class HeatTests
{
    private static HeatInput Hung(double diameter, double below, double watts) => HeatCases.InputOf(new FieldCase
    {
        BoardOuter = diameter / 2,
        Below = below,
        Above = 4,
        Sources = [(diameter * 0.3, diameter * 0.4, watts)],
    });

    private static HeatInput Vented(HeatInput input) => input with
    {
        Vents = new VentOpenings(4e-4, 4e-4, 0.06),
        Rings = [.. input.Rings.Select(ring => ring with { VentArea = ring.Area / 10 })],
        FloorDirection = FaceDirection.Upright,
    };

    [Property(MaxTest = 25)]
    public bool As_much_heat_leaves_as_is_made(byte size, byte watts, byte ambient, bool vented)
    {
        HeatInput sealedBox =
            Hung(40 + (size / 2.0), 1 + (size / 20.0), 0.05 + (watts / 40.0)) with { AmbientCelsius = -20 + (ambient / 4.0) };
        HeatInput input = (vented ? Vented(sealedBox) : sealedBox) with
        {
            ControllerWatts = 0.4,
            Rings = [.. (vented ? Vented(sealedBox) : sealedBox).Rings.Select((ring, i) => ring with { ControllerShare = i == 0 ? 1 : 0 })],
        };
        HeatResult result = HeatModel.Of(input, HeatCases.Typical);
        return result.HeatWatts > 0.4 && Math.Abs(result.LeavingWatts - result.HeatWatts) < 1e-4 * result.HeatWatts
            && result.Nodes.All(node => node.Mean > input.AmbientCelsius - 1e-6 && node.Low <= node.Celsius && node.High >= node.Celsius);
    }

    [Property(MaxTest = 15)]
    public bool Everything_that_should_warm_warms_and_everything_that_should_cool_cools(byte size, byte watts)
    {
        HeatInput input = Hung(50 + (size / 2.0), 6, 0.3 + (watts / 80.0)) with { Brightness = 0.5 };
        double Plastic(HeatInput i) => HeatModel.Of(i, HeatCases.Typical).WarmestPlastic.Celsius;
        double at = Plastic(input);
        return Plastic(input with { Brightness = 0.6 }) > at
            && Plastic(input with { Duty = 0.5 }) < at
            && Plastic(input with { AmbientCelsius = 31 }) > at
            && Plastic(input with { FloorDirection = FaceDirection.Upright }) < at
            && Plastic(Vented(input)) < Plastic(input with { FloorDirection = FaceDirection.Upright })
            && Plastic(input with { AboveToBezel = 2 * input.AboveToBezel }) > at

            // Thickness is no such wish: a thicker front also carries more heat to the cool rim.
            && Plastic(input with { Bezel = input.Bezel with { Conductivity = input.Bezel.Conductivity / 2 } }) > at;
    }

    [Fact]
    public void The_range_covers_the_dies_that_ship_under_one_name()
    {
        HeatInput usual = Hung(80, 6, 1.5);
        HeatInput input = usual with { LedLeastFullWatts = usual.LedFullWatts * 33 / 36, LedMostFullWatts = usual.LedFullWatts * 60 / 36 };
        NodeTemperature Board(HeatInput i) => HeatModel.Of(i, HeatCases.Typical)[HeatBody.Board];
        NodeTemperature told = Board(input);
        Assert.True(told.High >= Board(usual with { LedFullWatts = input.LedMostFullWatts }).Celsius);
        Assert.True(told.Low <= Board(usual with { LedFullWatts = input.LedLeastFullWatts }).Celsius);
        Assert.True(told.High - told.Celsius > 2 * (Board(usual).High - Board(usual).Celsius));
    }

    [Fact]
    public void The_largest_brightness_is_the_last_at_which_even_the_upper_end_of_the_range_keeps_the_limit()
    {
        HeatInput usual = Hung(80, 6, 4);
        HeatInput input = usual with { LedMostFullWatts = usual.LedFullWatts * 60 / 36 };
        double largest = HeatModel.LargestBrightness(input, HeatCases.Typical, 60, 80);
        double High(double brightness) => HeatModel.Of(input with { Brightness = brightness }, HeatCases.Typical).Nodes
            .Where(node => node.Body.TouchesPlastic()).Max(node => node.High);
        Assert.InRange(largest, 0.05, 0.95);
        Assert.InRange(High(largest), 50, 60.01);
        Assert.True(High(largest + 0.005) > 59.99);
        Assert.Equal(0, HeatModel.LargestBrightness(input, HeatCases.Typical, 29, 80));
        Assert.Equal(0, HeatModel.LargestBrightness(input, HeatCases.Typical, 60, 29));
        Assert.Equal(1, HeatModel.LargestBrightness(input, HeatCases.Typical, 1000, 1000));
    }

    [Fact]
    public void Warming_up_starts_cold_rises_all_the_way_and_ends_steady()
    {
        HeatResult result = HeatModel.Of(Hung(80, 6, 1.5), HeatCases.Typical);
        Assert.Equal(30, result.WarmUp[0].BoardCelsius, 6);
        for (int i = 1; i < result.WarmUp.Length; i++)
        {
            Assert.True(result.WarmUp[i].BoardCelsius > result.WarmUp[i - 1].BoardCelsius);
        }

        Assert.InRange(result[HeatBody.Board].Mean - result.WarmUp[^1].BoardCelsius, 0, 0.15 * (result[HeatBody.Board].Mean - 30));
        Assert.InRange(result.MinutesToNinetyPercent, 3, 120);
    }

    // By hand from the correlations: at a Rayleigh number of 1e5, which 10 K make in a gap of 50.9 mm, 3.99 lying and 3.0 upright.
    [Theory]
    [InlineData(45, 35, 0.0509, false, 3.99)]
    [InlineData(35, 45, 0.0509, false, 1)]
    [InlineData(45, 35, 0.0509, true, 3.0)]
    [InlineData(45, 35, 0.005, false, 1)]
    [InlineData(45, 35, 0.005, true, 1)]
    public void Air_turns_over_only_where_the_gap_is_thick_enough(double lower, double upper, double gap, bool upright, double nusselt) =>
        Assert.Equal(nusselt, GapConvection.Nusselt(lower, upper, gap, 20 * gap, upright), 1);

    [Fact]
    public void Strips_of_a_closed_room_see_no_more_than_all_of_it()
    {
        // Two plates of 100 mm, 10 mm apart, with two side walls: by hand the plates see sqrt(1 + 0.1^2) - 0.1 of each other.
        RoomStrip[] strips = [new(0, 1, 0, 1.1, 0), new(1, 1, 0.01, 1.1, 0.01), new(2, 1, 0, 1, 0.01), new(3, 1.1, 0, 1.1, 0.01)];
        var pairs = RoomSight.Pairs(strips, false).ToDictionary(pair => (pair.A.Point, pair.B.Point),
            pair => pair.Area / (Math.PI * (pair.A.Radius + pair.B.Radius)));
        Assert.Equal(0.1 * (Math.Sqrt(1.01) - 0.1), pairs[(0, 1)], 9);
        Assert.Equal(0.1, pairs[(0, 1)] + pairs[(0, 2)] + pairs[(0, 3)], 9);
    }
}
