using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.Light;
using ShellForge.Checks.Print;
using ShellForge.Physics.Light;
using ShellForge.Planning;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Checks.Tests.Light;

/// <summary>Light on whole housings as they are built: the shipped samples, and a band that side-facing LEDs light in the wall.</summary>
public class WholeHousingTests
{
    private static readonly WrittenBoard SideLit = new()
    {
        Outline = "{disc: 60}",
        Holes = ["{circle: 40, count: 4, from: 45, diameter: 2.2, keep-out: 5.0}"],
        Pixels = "{package: 4020-side, circle: 54, count: 16, from: 90, direction: cw, facing: out}",
        Wires = ["{name: cable, at: [0, -4], conductors: 3, gauge: 26, to: out}"],
        Cable = "{round: 4.0, angle: 270, relief: knot}",
        Insert = "m2x3-od3.6",
        Closure = "screws",
        Light = "{through: wall, look: blend, evenness: soft}",
        Diffuser = "{distance: auto}",
    };

    private static readonly WrittenBoard PortOnTop = new()
    {
        Outline = "{disc: 60}",
        Holes = ["{circle: 52, count: 4, from: 45, diameter: 2.2}"],
        Pixels = "{package: \"2020\", circle: 34, count: 12, from: 90, direction: cw}",
        Parts = ["{ref: J1, package: usb-c-receptacle, side: top, faces: 270, past-edge: -0.5}"],
        Insert = "m2x3-od3.6",
        Cable = "{part: J1}",
        Diffuser = "{fit: printed-in}",
    };

    private static readonly Lazy<HousingUnderCheck> Side = new(() => BuiltHousings.Of(SideLit.Read()));

    [Theory]
    [InlineData("mooring-beacon")]
    [InlineData("tide-lamp")]
    public void Halving_the_grid_moves_contrast_by_less_than_a_hundredth(string sample)
    {
        HousingUnderCheck housing = BuiltHousings.Of(WrittenBoard.Sample(sample));
        HousingLight coarse = housing.Light!;
        HousingLight fine = LightOfHousing.Of(housing, coarse.Map.Face.Step / 2)!;
        Assert.InRange(fine.Map.Face.Count, 3.9 * coarse.Map.Face.Count, 4.1 * coarse.Map.Face.Count);
        foreach ((CircleLight one, CircleLight other) in coarse.Circles.Zip(fine.Circles))
        {
            Assert.InRange(one.Along.Michelson - other.Along.Michelson, -0.01, 0.01);
            Assert.InRange(one.Along.MinimumOverMean - other.Along.MinimumOverMean, -0.01, 0.01);
        }
    }

    // Walls that run along the grid's diagonals once cast their edges' shadow a cell of the grid farther than others.
    [Fact]
    public void Narrow_cells_are_as_even_as_planned_whichever_way_their_walls_run()
    {
        HousingUnderCheck housing = BuiltHousings.Of(new WrittenBoard
        {
            Outline = "{disc: 120}",
            Holes = ["{circle: 112, count: 6, from: 90, diameter: 2.7}"],
            Pixels = "{package: \"2020\", circle: 99, count: 60, from: 90, direction: cw}",
            Insert = "m2.5x4-od4.0",
            Cable = "none",
            Light = "{through: front, look: pixels, evenness: soft}",
            Diffuser = "{thickness: 0.6, distance: auto}",
        }.Read());
        Assert.InRange(Assert.Single(housing.Light!.Circles).Along.MinimumOverMean, 0.6, 0.75);
    }

    [Fact]
    public void Side_facing_LEDs_light_the_band_in_the_wall()
    {
        HousingUnderCheck housing = Side.Value;
        Assert.Empty(housing.Plan.Refusals);
        Assert.All(housing.Parts, part => Assert.True(part.IsSound, part.Name));
        BandPlan band = housing.Plan.Diffuser.Band!;
        HousingLight light = housing.Light!;
        ReceiverGrid face = light.Map.Face;
        Assert.True(face.Wraps);
        Assert.Equal(band.Bottom, face.Bottom, 6);

        // Half of what a lobe of 120 degrees sends out meets a wall beside it within the band's height; seams and a dark front get next to
        // nothing.
        Assert.InRange(light.Map.DirectShare, 0.2, 0.6);
        Assert.InRange(light.Leaks.SeamShare, 0, 0.01);

        // Before each LED it is brighter than between two of them, where no rib stands, and the lone LED lights its own side.
        double around = face.Columns * face.Step;
        double z = housing.Plan.Stack.BoardTop + 0.8;
        double At(ReadOnlySpan<float> cells, double degrees) => face.Sample(cells, degrees / 360 * around, z);
        for (int i = 0; i < 16; i++)
        {
            double middle = 90 - (i * 22.5);
            double before = At(light.Map.Irradiance.All, (middle + 720) % 360);
            double between = At(light.Map.Irradiance.All, (middle + 731.25) % 360);
            Assert.True(double.IsNaN(between) || before > between, $"LED {i}");
        }

        Assert.True(At(light.Map.Irradiance.Alone, 90) > 1000 * At(light.Map.Irradiance.Alone, 270));
    }

    [Fact]
    public void The_wall_over_a_band_lies_on_the_band_that_is_printed_with_it()
    {
        Finding[] found = [.. new NothingBelow().Check(Side.Value)];
        Assert.DoesNotContain(found, finding => finding.Severity is Severity.Stop or Severity.Warn);

        // Without the band in the job the wall starts in the air.
        HousingUnderCheck alone = Side.Value with { Parts = [.. Side.Value.Parts.Where(part => part.Name != PartNames.Diffuser)] };
        Assert.Contains(new NothingBelow().Check(alone), finding => finding is { Severity: Severity.Stop, Subject: PartNames.Cover });
    }

    // By hand: 5 mm from an LED and 3.2 above it the rim gets 0.0050 of the LED's light on each mm2 and passes 1 / (1 + 0.86 / 0.25) of it,
    // 0.0011. The window, 951 mm2 for 12 LEDs, gets half of theirs straight or a little more and passes 1 / (1 + 0.8 / 0.25), at its rims
    // less: 0.0014 to 0.0016.
    [Fact]
    public void A_white_baffle_seen_through_a_port_on_the_LED_side_is_told_as_the_baffle()
    {
        HousingUnderCheck housing = BuiltHousings.Of(PortOnTop.Read("print.baffle=petg-white"));
        Finding found = Assert.Single(new WallGlows().Check(housing));
        Assert.Equal("baffle", found.Subject);
        Assert.InRange(found.Measured!.Value, 0.68, 0.80);
        Assert.InRange(found.At!.Value.X, -7, 7);
        Assert.InRange(found.At.Value.Y, -23, -22);
        Assert.Contains("'print: {baffle: petg-black}'", found.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void A_baffle_whose_filament_is_left_to_the_plan_does_not_glow_through_a_port()
    {
        HousingUnderCheck housing = BuiltHousings.Of(PortOnTop.Read());
        Assert.Equal("petg-black", housing.Plan.Baffle!.Filament.Name);
        Assert.Empty(new WallGlows().Check(housing));

        // Where nobody looks in, white walls throw light back.
        Assert.Equal("petg-white", HousingPlanner.Plan(PortOnTop.Read("board.parts[0].side=bottom")).Baffle!.Filament.Name);
        Assert.Equal("petg-white", HousingPlanner.Plan((PortOnTop with { Cable = "none" }).Read()).Baffle!.Filament.Name);
    }
}
