using System.Globalization;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Physics.Heat;

namespace ShellForge.Checks.Heat;

/// <summary>LEDs above what they bear.</summary>
public sealed class LedsTooWarm() : Rule(
    "leds-too-warm",
    "LEDs must stay within their data sheet in the warmest surrounding air.",
    "Warm LEDs fade within weeks, and one that fails takes all behind it along.",
    "steady heat of LEDs, controller, board, air and walls; the LEDs' bodies above the board under them, at the brightness that the "
        + "firmware allows. It warns where usual LEDs get past the limit, and is a note where only the upper end of the range does and "
        + "plastic-too-warm does not already warn of the same heat",
    "data sheets of addressable LEDs, -25 to +80 degrees")
{
    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        HousingHeat heat = housing.Heat;
        bool capped = housing.Board.Power.Capped;
        HeatResult reached = heat.Reached(capped);
        NodeTemperature leds = reached[HeatBody.Leds];
        bool over = leds.Celsius > heat.LedLimit;
        bool close = leds.High > heat.LedLimit && reached.WarmestPlastic.Celsius <= heat.PlasticLimitCelsius;
        if (heat.Input.Leds > 0 && (over || close))
        {
            yield return Found(
                over ? Severity.Warn : Severity.Note, "LEDs",
                string.Create(CultureInfo.InvariantCulture,
                    $"{HeatWords.When(housing, capped)} the LEDs reach {HeatWords.Range(leds)}: they are good to {heat.LedLimit:0} "
                        + $"\u00b0C{(over ? "" : ", too close to call")}."),
                over ? leds.Celsius : leds.High, heat.LedLimit, Places.OfBody(housing, HeatBody.Leds), HeatWords.Cooler(housing, null),
                "\u00b0C");
        }
    }
}
