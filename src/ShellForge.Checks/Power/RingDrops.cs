using System.Globalization;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Physics.Power;

namespace ShellForge.Checks.Power;

/// <summary>Voltage lost along a ring.</summary>
public sealed class RingDrops() : Rule(
    "ring-drops",
    "The LED farthest from a feed must still get clean voltage.",
    "At the far end of a long ring white turns pink and dim.",
    "segment resistance x current per LED x n2 / 8 for n LEDs between the two neighbouring feeds that lie farthest apart on a closed "
        + "ring, each feed at the LED next to it, strongest dies, at the largest brightness that the firmware allows",
    "6 mOhm a segment, out and back, measured on a strip, typical; 0.25 V is 5 % of 5 V, trade practice")
{
    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        BoardPower power = housing.Power;
        bool capped = housing.Board.Power.Capped;
        double drop = capped ? power.Result.RingDropVolts : power.Result.FullRingDropVolts;
        if (drop > PowerModel.DropBudgetVolts)
        {
            int feeds = PowerModel.Of(power.Input with { Brightness = capped ? power.Input.Brightness : 1 }).FeedsNeeded;
            int even = (power.Input.RingLeds + power.Input.Feeds - 1) / power.Input.Feeds;
            string uneven = power.Input.WidestArc is int arc && arc > even + 1 ? $", {arc} of them from one to the next," : "";
            yield return Found(
                Severity.Warn, "LEDs",
                string.Create(CultureInfo.InvariantCulture,
                    $"{power.Input.RingLeds} LEDs on {power.Input.Feeds} {(power.Input.Feeds == 1 ? "feed" : "feeds")}{uneven} lose "
                        + $"{1000 * drop:0} mV to the farthest; {1000 * PowerModel.DropBudgetVolts:0} mV is the most."),
                drop, PowerModel.DropBudgetVolts, Places.OfFarthestLed(housing),
                string.Create(CultureInfo.InvariantCulture, $"feed the ring at {feeds} evenly spread places, both arcs joined"), "V");
        }
    }
}
