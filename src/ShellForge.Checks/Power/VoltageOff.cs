using System.Globalization;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;

namespace ShellForge.Checks.Power;

/// <summary>A supply whose voltage LEDs or hands don't bear.</summary>
public sealed class VoltageOff() : Rule(
    "voltage-off",
    "The supply's voltage must suit the LEDs, and be one that a printed housing may hold.",
    "Too much kills the LEDs at once; touchable voltage in printed plastic kills people.",
    "volts of the supply against 4.5 to 5.3 V of the LEDs, and against 50 V",
    "data sheets of addressable LEDs, 3.5 to 5.3 V; extra-low voltage ends at 50 V AC")
{
    private const double LeastClean = 4.5;
    private const double MostLed = 5.3;
    private const double MostTouched = 50;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        double volts = housing.Board.Power.Volts;
        string supply = housing.Board.Power.Supply;
        if (volts > MostTouched)
        {
            yield return Found(
                Severity.Stop, supply,
                string.Create(CultureInfo.InvariantCulture, $"{volts:0.#} V in a printed housing are outside of what can be checked here"),
                volts, MostTouched, Places.OfFeed(housing), "a certified external low-voltage supply; mains is for a licensed electrician and local codes", "V");
        }
        else if (volts > MostLed && housing.Power.Input.Leds > 0)
        {
            yield return Found(
                Severity.Warn, supply,
                string.Create(CultureInfo.InvariantCulture, $"{supply} gives {volts:0.#} V; LEDs bear {MostLed:0.0} V, so the board needs a converter, and its own heat is not counted"),
                volts, MostLed, Places.OfFeed(housing), "a 5 V supply, or make sure of the converter and give it as a part with its watts", "V");
        }
        else if (volts < LeastClean && housing.Power.Input.Leds > 0)
        {
            yield return Found(
                Severity.Note, supply,
                string.Create(CultureInfo.InvariantCulture, $"{supply} gives {volts:0.#} V: white looks warmer and dims as it sinks"),
                volts, LeastClean, Places.OfFeed(housing), "a 5 V supply, or a converter", "V");
        }
    }
}
