using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Checks.Gauges;
using ShellForge.Planning.Hands;

namespace ShellForge.Checks;

/// <summary>
/// Short cautions that this housing calls for and that belong to no step of the hands; those stand with their steps
/// (<see cref="HandStep.Cautions"/>). Nothing is told twice.
/// </summary>
public static class Cautions
{
    // Above this a supply is no longer of the kind that may be touched, V.
    private const double ExtraLow = 50;

    // Below this a supply is a cell rather than a 5 V port, V.
    private const double CellVolts = 4.3;

    /// <summary>The cautions, the most urgent first.</summary>
    public static ImmutableArray<HandCaution> Of(HousingUnderCheck housing)
    {
        var cautions = ImmutableArray.CreateBuilder<HandCaution>();
        double volts = housing.Board.Power.Volts;
        cautions.Add(volts > ExtraLow
            ? new HandCaution("Mains and high voltage",
                "This voltage kills. Use a certified external low-voltage supply instead. Where that can't be, local codes hold, and the "
                    + "work is a licensed electrician's.")
            : new HandCaution("Power", string.Create(
                CultureInfo.InvariantCulture,
                $"Feed it from a certified supply of {volts:0.##} V that limits its current, and unplug it before you open the "
                    + $"housing.")));
        if (volts < CellVolts && housing.Plan.Bay is null)
        {
            cautions.Add(
                new HandCaution("Battery",
                    "Lithium cells need their protection circuit, a charger made for them, room to swell, and nothing sharp beside them."));
        }

        if (housing.Power.Input.Leds > 0)
        {
            cautions.Add(new HandCaution("Heat", string.Create(
                CultureInfo.InvariantCulture,
                $"{housing.Heat.WeakestFilament} softens near {housing.Heat.PlasticSoftensCelsius:0} \u00b0C and is good for "
                    + $"{housing.Heat.PlasticLimitCelsius:0} \u00b0C. Keep the firmware's cap on brightness, do not cover the lamp, keep "
                    + $"it out of the sun behind glass, and do not leave it alone on its first evening.")));
        }

        return cautions.ToImmutable();
    }

    /// <summary>These and those of the steps, each once.</summary>
    public static ImmutableArray<HandCaution> All(HousingUnderCheck housing) =>
        [.. Of(housing).Concat(housing.Plan.Steps.SelectMany(step => step.Cautions)).Distinct()];
}
