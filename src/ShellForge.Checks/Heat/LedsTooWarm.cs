using System.Globalization;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Physics.Heat;
using ShellForge.Physics.Power;

namespace ShellForge.Checks.Heat;

/// <summary>LEDs above what they bear.</summary>
public sealed class LedsTooWarm() : Rule(
    "leds-too-warm",
    "LEDs must stay within their data sheet in the warmest surrounding air.",
    "Warm LEDs fade within weeks, and one that fails takes all behind it along.",
    "steady heat network; the LEDs' bodies above the board under them",
    "data sheets of addressable LEDs, -25 to +80 degrees")
{
    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        HousingHeat heat = housing.Heat;
        NodeTemperature leds = (housing.Board.Power.Capped ? heat.Planned : heat.FullWhite)["leds"];
        if (heat.Input.Leds > 0 && leds.Celsius > heat.LedLimit)
        {
            yield return Found(
                Severity.Warn, "LEDs",
                string.Create(CultureInfo.InvariantCulture, $"LEDs get {leds.Celsius:0} degC (give or take {leds.PlusMinus:0} K){(housing.Board.Power.Capped ? "" : " at full white, which the firmware does not cap")}"),
                leds.Celsius, heat.LedLimit, Places.OfBody(housing, leds.Name),
                string.Create(CultureInfo.InvariantCulture, $"cap the firmware's brightness at {PowerModel.FirmwareCap(heat.LargestBrightness)} of 255 and say 'capped: true'"), "degC");
        }
    }
}
