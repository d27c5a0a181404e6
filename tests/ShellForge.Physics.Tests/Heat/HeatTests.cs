using FsCheck.Xunit;
using ShellForge.Physics.Heat;

namespace ShellForge.Physics.Tests.Heat;

public class HeatTests
{
    private static readonly HeatCoefficients Typical = new()
    {
        UprightConvection = new(1.42, 1.2, 1.6, "upright plate"),
        UpConvection = new(1.32, 1.1, 1.5, "warm face up"),
        DownConvection = new(0.59, 0.5, 0.7, "warm face down"),
        InnerConvection = new(6, 4.5, 8, "small closed boxes"),
        Emissivity = new(0.9, 0.85, 0.95, "plastics"),
        HeatShare = new(0.9, 0.85, 0.95, "the rest leaves as light"),
        LedToBoard = new(40, 25, 60, "small package"),
        ControllerToBoard = new(15, 8, 25, "module soldered flat"),
        VentDischarge = new(0.6, 0.5, 0.7, "sharp-edged slots"),
        AirHeat = 1130,
        LedHeat = 0.1,
        ControllerHeat = 3,
    };

    // A flat round housing hung on a wall: front and side in free air, floor covered. mm in.
    private static HeatInput Hung(double diameter, double height, double watts, double conductivity = 0.2, double wall = 2)
    {
        double d = diameter / 1000;
        double h = height / 1000;
        double front = Math.PI * d * d / 4;
        double side = Math.PI * d * h;
        double t = wall / 1000;
        return new HeatInput
        {
            Walls =
            [
                new("floor", front, front, t, conductivity, FaceDirection.Covered, d, 20),
                new("side", side, side, t, conductivity, FaceDirection.Upright, d, 15),
                new("front", front, front, t, conductivity, FaceDirection.Upright, d, 20),
            ],
            BoardArea = 0.8 * front,
            BoardHeatCapacity = 20,
            Leds = 24,
            LedFullWatts = watts / Typical.HeatShare.Value,
            LedIdleWatts = 0,
            Brightness = 1,
            AmbientCelsius = 30,
            AirVolume = front * h * 0.6,
        };
    }

    [Fact]
    public void A_plate_in_air_is_as_warm_as_by_hand()
    {
        // One upright wall of 0.01 m2, 0.1 m high, thin and well conducting, at 1 W. By hand: 1.42 (dT / 0.1)^0.25 + 0.9 sigma (T4 - Ta4) / dT
        // at dT = 9.45 K above 20 degrees gives 4.43 + 5.39 = 9.82 W/m2K; 0.01 x 9.82 x dT = 1 W at dT = 10.1 K: with 4.50 + 5.41 at 10.1.
        var network = new HeatInput
        {
            Walls = [new("plate", 0.01, 0.01, 0.001, 400, FaceDirection.Upright, 0.1, 10)],
            BoardArea = 0.005,
            BoardHeatCapacity = 5,
            Leds = 1,
            LedFullWatts = 1 / Typical.HeatShare.Value,
            LedIdleWatts = 0,
            Brightness = 1,
            AmbientCelsius = 20,
            AirVolume = 1e-4,
        };
        double rise = HeatModel.Of(network, Typical)["plate outside"].Celsius - 20;
        Assert.InRange(rise / 10.1, 0.99, 1.01);
    }

    [Fact]
    public void A_sealed_box_is_as_warm_as_its_resistances_in_series_by_hand()
    {
        // All heat goes LED -> board -> air -> wall when nothing radiates inside: the drops are P / n x R, P / (2 A h), P / (A h), P t / (k A).
        HeatCoefficients dull = Typical with { Emissivity = Typical.Emissivity with { Value = 1e-9 } };
        const double area = 0.02;
        var box = new HeatInput
        {
            Walls = [new("box", area, area, 0.002, 0.2, FaceDirection.Upright, 0.05, 50)],
            BoardArea = 0.004,
            BoardHeatCapacity = 10,
            Leds = 10,
            LedFullWatts = 2 / dull.HeatShare.Value,
            LedIdleWatts = 0,
            Brightness = 1,
            AmbientCelsius = 25,
            AirVolume = 2e-4,
        };
        HeatResult result = HeatModel.Of(box, dull);
        Assert.Equal(2 * 40 / 10.0, result["leds"].Celsius - result["board"].Celsius, 3);
        Assert.Equal(2 / (2 * 0.004 * 6), result["board"].Celsius - result["inner air"].Celsius, 3);
        Assert.Equal(2 / (area * 6), result["inner air"].Celsius - result["box inside"].Celsius, 3);
        Assert.Equal(2 * 0.002 / (0.2 * area), result["box inside"].Celsius - result["box outside"].Celsius, 3);

        // 1.42 (dT / 0.05)^0.25 x 0.02 x dT = 2 W: dT = (2 / (0.02 x 1.42) x 0.05^0.25)^0.8 = 16.5 K.
        double outer = Math.Pow(2 / (area * 1.42) * Math.Pow(0.05, 0.25), 0.8);
        Assert.Equal(16.5, outer, 1);
        Assert.InRange((result["box outside"].Celsius - 25) / outer, 0.999, 1.001);
    }

    // Watts that raise the inner air by so much, from the table for sealed housings on a wall; its own two readings of the inner
    // resistance differ by 0.7.
    [Theory]
    [InlineData(15, 60, 20, 0.5)]
    [InlineData(15, 80, 22, 0.7)]
    [InlineData(15, 120, 30, 1.6)]
    [InlineData(20, 80, 22, 1.0)]
    [InlineData(20, 100, 25, 1.5)]
    [InlineData(20, 180, 25, 3.7)]
    [InlineData(30, 60, 20, 1.0)]
    [InlineData(30, 80, 22, 1.6)]
    [InlineData(40, 120, 30, 4.5)]
    [InlineData(40, 180, 25, 7.7)]
    public void The_inner_air_rises_as_the_trades_table_for_sealed_housings_says(double rise, double diameter, double height, double watts)
    {
        HeatResult result = HeatModel.Of(Hung(diameter, height, watts), Typical);
        NodeTemperature air = result["inner air"];
        Assert.InRange((air.Celsius - 30) / rise, 0.75, 1.35);
        Assert.InRange(air.PlusMinus, 0.5, 0.35 * rise);
    }

    [Fact]
    public void The_inner_wall_rises_by_about_half_of_the_air()
    {
        HeatResult result = HeatModel.Of(Hung(80, 22, 1.0), Typical);
        Assert.InRange((result["front inside"].Celsius - 30) / (result["inner air"].Celsius - 30), 0.4, 0.85);
    }

    [Property(MaxTest = 60)]
    public bool As_much_heat_leaves_as_is_made(byte size, byte watts, byte ambient, bool vented)
    {
        HeatInput input = Hung(40 + (size / 2.0), 15 + (size / 16.0), 0.05 + (watts / 40.0)) with
        {
            AmbientCelsius = -20 + (ambient / 4.0),
            ControllerWatts = 0.4,
            Vents = vented ? new VentOpenings(3e-4, 2e-4, 0.05) : default,
        };
        HeatResult result = HeatModel.Of(input, Typical);
        return result.HeatWatts > 0.4 && Math.Abs(result.LeavingWatts - result.HeatWatts) < 1e-4 * result.HeatWatts
            && result.Nodes.All(node => node.Celsius > input.AmbientCelsius - 1e-9 && node.PlusMinus >= 0);
    }

    [Property(MaxTest = 40)]
    public bool Everything_that_should_warm_warms_and_everything_that_should_cool_cools(byte size, byte watts)
    {
        HeatInput input = Hung(50 + (size / 2.0), 20, 0.3 + (watts / 80.0)) with { Brightness = 0.5 };
        double Plastic(HeatInput i) => HeatModel.Of(i, Typical).WarmestPlastic.Celsius;
        double at = Plastic(input);
        return Plastic(input with { Brightness = 0.6 }) > at
            && Plastic(input with { Duty = 0.5 }) < at
            && Plastic(input with { AmbientCelsius = 31 }) > at
            && Plastic(input with { ControllerWatts = 0.5 }) > at
            && Plastic(input with { Vents = new VentOpenings(4e-4, 4e-4, 0.06) }) < at
            && Plastic(input with { Walls = [input.Walls[0] with { Direction = FaceDirection.Upright }, .. input.Walls[1..]] }) < at
            && Plastic(input with { Walls = [.. input.Walls.Select(wall => wall with { Thickness = 2 * wall.Thickness })] }) > at;
    }

    [Fact]
    public void Vents_carry_what_the_chimney_formula_says()
    {
        // 5 to 6 cm2 in and out carry one watt at 15 K over a stack of 50 to 80 mm.
        var hot = new HeatInput
        {
            Walls = [new("box", 1e-9, 1e-9, 0.002, 0.2, FaceDirection.Upright, 0.05, 1)],
            BoardArea = 0.004,
            BoardHeatCapacity = 10,
            Leds = 10,
            LedFullWatts = 1 / Typical.HeatShare.Value,
            LedIdleWatts = 0,
            Brightness = 1,
            AmbientCelsius = 25,
            AirVolume = 2e-4,
            Vents = new VentOpenings(5.5e-4, 5.5e-4, 0.065),
        };
        Assert.InRange(HeatModel.Of(hot, Typical)["inner air"].Celsius - 25, 12, 18);
    }

    [Fact]
    public void The_largest_brightness_is_the_last_that_keeps_the_limit()
    {
        HeatInput input = Hung(80, 22, 4);
        double limit = 60;
        double largest = HeatModel.LargestBrightness(input, Typical, result => result.WarmestPlastic.Celsius <= limit);
        Assert.InRange(largest, 0.05, 0.95);
        Assert.True(HeatModel.Of(input with { Brightness = largest }, Typical).WarmestPlastic.Celsius <= limit);
        Assert.True(HeatModel.Of(input with { Brightness = largest + 0.005 }, Typical).WarmestPlastic.Celsius > limit);
        Assert.Equal(0, HeatModel.LargestBrightness(input, Typical, _ => false));
        Assert.Equal(1, HeatModel.LargestBrightness(input, Typical, _ => true));
    }

    [Fact]
    public void Warming_up_starts_cold_rises_all_the_way_and_ends_steady()
    {
        HeatResult result = HeatModel.Of(Hung(80, 22, 1.5), Typical);
        Assert.Equal(30, result.WarmUp[0].BoardCelsius);
        for (int i = 1; i < result.WarmUp.Length; i++)
        {
            Assert.True(result.WarmUp[i].BoardCelsius > result.WarmUp[i - 1].BoardCelsius);
        }

        Assert.InRange(result["board"].Celsius - result.WarmUp[^1].BoardCelsius, 0, 0.15 * (result["board"].Celsius - 30));
        Assert.InRange(result.MinutesToNinetyPercent, 5, 120);
    }
}
