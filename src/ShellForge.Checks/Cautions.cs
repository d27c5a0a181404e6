using System.Collections.Immutable;
using ShellForge.Checks.Gauges;

namespace ShellForge.Checks;

/// <summary>Short cautions that this housing calls for, where hands or eyes are at risk.</summary>
public static class Cautions
{
    // Above this a supply is no longer of the kind that may be touched, V.
    private const double ExtraLow = 50;

    // Below this a supply is a cell rather than a 5 V port, V.
    private const double CellVolts = 4.3;

    /// <summary>The cautions, the most urgent first.</summary>
    public static ImmutableArray<string> Of(HousingUnderCheck housing)
    {
        var cautions = ImmutableArray.CreateBuilder<string>();
        if (housing.Board.Power.Volts > ExtraLow)
        {
            cautions.Add("Mains and high voltage: use a certified external low-voltage supply. Local codes hold, and mains work is a licensed electrician's.");
        }
        else
        {
            cautions.Add("Feed it from a certified, current-limited low-voltage supply; nothing of the mains belongs inside.");
        }

        if (housing.Board.Power.Volts < CellVolts)
        {
            cautions.Add("Lithium cells need their protection circuit, a charger made for them, room, and nothing sharp beside them.");
        }

        if (housing.Power.Input.Leds > 0)
        {
            cautions.Add("Start dim and do not stare into the LEDs from near. Flashing can set off seizures: at most three flashes a second, and a warning before a demonstration.");
            cautions.Add(string.Create(
                System.Globalization.CultureInfo.InvariantCulture,
                $"{housing.Heat.WeakestFilament} softens near {housing.Heat.PlasticSoftensCelsius:0} degC and is good for {housing.Heat.PlasticLimitCelsius:0}: keep the firmware's cap, do not cover the lamp, no sun behind glass, and not alone on its first evening."));
        }

        if (!housing.Plan.Screws.IsEmpty)
        {
            cautions.Add("The iron that sets inserts burns skin, and hot plastic gives off fumes: air the room, hold the part in a vice, let it cool.");
        }

        return cautions.ToImmutable();
    }
}
