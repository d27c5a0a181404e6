using FsCheck.Xunit;
using ShellForge.Physics.Power;

namespace ShellForge.Physics.Tests.Power;

public class PowerTests
{
    private static PowerInput Board(int leds, double supply, double brightness = 1, double milliamps = 52) => new()
    {
        Leds = leds,
        FullWhiteAmps = leds * 0.036,
        StrongestAmps = leds * milliamps / 1000,
        IdleAmps = 0,
        OtherAmps = 0.1,
        Brightness = brightness,
        SupplyAmps = supply,
        RingLeds = leds,
    };

    [Theory]
    [InlineData(0.5, 5)]
    [InlineData(1.5, 21)]
    [InlineData(3.0, 44)]
    public void So_many_LEDs_at_full_white_as_the_trade_counts_on_a_USB_supply(double supply, int leds)
    {
        Assert.Equal(1, PowerModel.Of(Board(leds, supply)).AllowedBrightness);
        Assert.True(PowerModel.Of(Board(leds + 1, supply)).AllowedBrightness < 1);
    }

    [Fact]
    public void Sixty_LEDs_by_hand()
    {
        // Idle 60 mA and controller 100 mA; a fifth of (60 x 36 - 60) mA above that; strongest dies 60 mA.
        PowerResult result = PowerModel.Of(new PowerInput
        {
            Leds = 60,
            FullWhiteAmps = 2.16,
            StrongestAmps = 3.6,
            IdleAmps = 0.06,
            OtherAmps = 0.1,
            Brightness = 0.2,
            Duty = 0.5,
            SupplyAmps = 2,
            ContactAmps = 2.5,
            RingLeds = 60,
            Feeds = 2,
        });
        Assert.Equal(0.16, result.IdleAmps, 9);
        Assert.Equal(0.58, result.PlannedAmps, 9);
        Assert.Equal(0.37, result.MeanAmps, 9);
        Assert.Equal(2.26, result.FullWhiteAmps, 9);
        Assert.Equal(3.7, result.StrongestAmps, 9);
        Assert.Equal(0.868, result.PlannedStrongestAmps, 9);
        Assert.Equal(1.6, result.AllowedAmps, 9);
        Assert.Equal((1.6 - 0.16) / 3.54, result.AllowedBrightness, 9);
    }

    [Theory]
    [InlineData(60, 1)]
    [InlineData(60, 2)]
    [InlineData(45, 3)]
    [InlineData(24, 1)]
    [InlineData(25, 1)]
    public void The_drop_along_a_ring_is_the_one_that_nodes_and_currents_give(int leds, int feeds)
    {
        // Nodal analysis by relaxation: fed LEDs sit at 0, all others draw 1 A through segments of 1 ohm.
        double[] v = new double[leds];
        for (int round = 0; round < 60000; round++)
        {
            for (int i = 0; i < leds; i++)
            {
                if (i % (leds / feeds) != 0)
                {
                    v[i] = ((v[(i + 1) % leds] + v[(i + leds - 1) % leds]) / 2) + 0.5;
                }
            }
        }

        Assert.InRange(PowerModel.RingDrop(leds, feeds, 1, 1) / v.Max(), 0.9999, 1.0001);
    }

    [Fact]
    public void A_feed_on_each_side_quarters_the_drop_and_long_rings_ask_for_it()
    {
        double one = PowerModel.RingDrop(60, 1, 0.06, 0.006);
        Assert.InRange(one, 0.15, 0.18);
        Assert.Equal(one / 4, PowerModel.RingDrop(60, 2, 0.06, 0.006), 9);
        Assert.Equal(1, PowerModel.Of(Board(60, 4, 1, 60)).FeedsNeeded);
        Assert.Equal(2, PowerModel.Of(Board(120, 9, 1, 60)).FeedsNeeded);
    }

    [Theory]
    [InlineData(0.2, 51)]
    [InlineData(1, 255)]
    [InlineData(0, 0)]
    [InlineData(0.5, 127)]
    public void The_firmware_byte_never_exceeds_the_share(double brightness, int cap) =>
        Assert.Equal(cap, PowerModel.FirmwareCap(brightness));

    [Theory]
    [InlineData(1.0, 0.2, 26)]
    [InlineData(1.5, 0.2, 24)]
    [InlineData(2.5, 0.2, 22)]
    [InlineData(2.5, 1.0, 20)]
    [InlineData(9.0, 0.2, null)]
    public void The_thinnest_wire_that_carries_the_current_and_keeps_the_drop(double amps, double metres, int? gauge) =>
        Assert.Equal(gauge, WireGauges.Thinnest(amps, metres, PowerModel.DropBudgetVolts)?.Gauge);

    [Fact]
    public void A_gauge_between_two_of_the_table_counts_as_the_thinner_one()
    {
        Assert.Equal(24, WireGauges.Of(23)!.Value.Gauge);
        Assert.Equal(18, WireGauges.Of(16)!.Value.Gauge);
        Assert.Null(WireGauges.Of(30));
        Assert.Equal(0.106, WireGauges.Of(22)!.Value.PairDropVolts(1, 1), 9);
    }

    [Property]
    public bool More_brightness_draws_more_and_a_stronger_supply_never_allows_less(byte leds, byte brightness, byte supply)
    {
        PowerInput input = Board(1 + leds, 0.3 + (supply / 50.0), brightness / 512.0);
        PowerResult result = PowerModel.Of(input);
        PowerResult brighter = PowerModel.Of(input with { Brightness = input.Brightness + 0.1 });
        PowerResult stronger = PowerModel.Of(input with { SupplyAmps = input.SupplyAmps + 0.5 });
        PowerResult allowed = PowerModel.Of(input with { Brightness = result.AllowedBrightness });
        return brighter.PlannedAmps > result.PlannedAmps && brighter.RingDropVolts >= result.RingDropVolts
            && stronger.AllowedBrightness >= result.AllowedBrightness
            && (result.AllowedBrightness == 0 || allowed.PlannedStrongestAmps <= result.AllowedAmps + 1e-9);
    }
}
