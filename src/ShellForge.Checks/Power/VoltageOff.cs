using System.Globalization;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;

namespace ShellForge.Checks.Power;

/// <summary>A supply whose voltage LEDs or hands don't bear.</summary>
public sealed class VoltageOff() : Rule(
    "voltage-off",
    "The supply's voltage must suit the LEDs, and be one that a printed housing may hold.",
    "Too much kills the LEDs at once; touchable voltage in printed plastic kills people.",
    "volts of the supply against what the LEDs work at, 3.5 to 5.3 V, and against 50 V; outside it stops, below 4.5 V it is a note",
    "data sheets of addressable LEDs, 3.5 to 5.3 V; extra-low voltage ends at 50 V AC")
{
    private const double LeastLed = 3.5;
    private const double LeastClean = 4.5;
    private const double MostLed = 5.3;
    private const double MostTouched = 50;

    // What to use instead. A converter is not drawn, so the maker says that it is there by accepting the rule.
    private const string Instead =
        "take a 5 V supply ('supply: usb-c-1.5A' or 'barrel-5V-2A'); where the board makes 5 V of it by a converter, accept 'voltage-off' "
            + "with that as the reason, and give the converter as a part with its watts";

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        double volts = housing.Board.Power.Volts;
        string supply = housing.Board.Power.Supply;
        bool leds = housing.Power.Input.Leds > 0;
        if (volts > MostTouched)
        {
            yield return Found(
                Severity.Stop, supply,
                string.Create(CultureInfo.InvariantCulture,
                    $"{volts:0.#} V can't be touched safely and don't belong in a printed housing."),
                volts, MostTouched, Places.OfFeed(housing),
                "a certified external low-voltage supply; mains is for a licensed electrician and local codes", "V");
        }
        else if (volts > MostLed && leds)
        {
            yield return Found(
                Severity.Stop, supply,
                string.Create(CultureInfo.InvariantCulture, $"{volts:0.#} V would destroy the LEDs: they bear {MostLed:0.0} V."),
                volts, MostLed, Places.OfFeed(housing), Instead, "V");
        }
        else if (volts < LeastLed && leds)
        {
            yield return Found(
                Severity.Stop, supply,
                string.Create(CultureInfo.InvariantCulture,
                    $"At {volts:0.#} V the LEDs stay dark or flicker: they need {LeastLed:0.0} V at least."),
                volts, LeastLed, Places.OfFeed(housing), Instead, "V");
        }
        else if (volts < LeastClean && leds)
        {
            yield return Found(
                Severity.Note, supply,
                string.Create(CultureInfo.InvariantCulture, $"At {volts:0.#} V white looks warmer, and the LEDs dim as the voltage sinks."),
                volts, LeastClean, Places.OfFeed(housing), "a 5 V supply, or a converter to 5 V", "V");
        }
    }
}
