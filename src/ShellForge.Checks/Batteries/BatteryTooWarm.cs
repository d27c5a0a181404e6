using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.Heat;
using ShellForge.Checks.Power;
using ShellForge.Physics.Heat;
using ShellForge.Planning.Marks;

namespace ShellForge.Checks.Batteries;

/// <summary>A battery in air that is too warm for it.</summary>
public sealed class BatteryTooWarm() : Rule(
    "battery-too-warm",
    "The air inside must stay as cool as the battery's data sheet asks.",
    "A warm cell ages in months, a pouch swells, and a lithium cell that is charged too warm may catch fire.",
    "steady temperature of the inner air at the brightness that the firmware allows, in the warmest surrounding air; above the battery's "
        + "limit warns, 15 degrees above it stops",
    "45 degrees for lithium cells, 50 for alkaline ones: typical; the battery's profile says it, check your data sheet")
{
    // A lithium cell may be used, though not charged, up to 60 degrees where it may be charged up to 45. Typical: check your data sheet.
    private const double StopsAbove = 15;

    // Halvings of the brightness looked for: to less than a hundredth.
    private const int Halvings = 7;
    private const double BrightnessStep = 0.01;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        if (housing.Plan.Bay is not { } bay)
        {
            yield break;
        }

        PowerSpec power = housing.Board.Power;
        NodeTemperature air = housing.Heat.Reached(power.Capped)[HeatBody.InnerAir];
        double limit = bay.Size.Battery.WarmestCelsius;
        if (air.Celsius > limit)
        {
            yield return Found(
                air.Celsius > limit + StopsAbove ? Severity.Stop : Severity.Warn, "battery",
                string.Create(CultureInfo.InvariantCulture,
                    $"{HeatWords.When(housing, power.Capped)} the air round it reaches {HeatWords.Range(air)}: it is good to {limit:0} "
                        + $"\u00b0C."),
                air.Celsius, limit, bay.Middle, Remedy(housing), "\u00b0C");
        }
    }

    private static string Remedy(HousingUnderCheck housing)
    {
        string vents = HeatWords.Vented(housing) is { } vented ? vented + ", " : "";
        return CoolEnough(housing) is double cool && BrightnessCap.Remedy(housing, cool) is { } dimmed
            ? $"{dimmed}, {vents}or keep the battery outside"
            : $"dimming alone does not help: {vents}use it in a cooler place ('use: {{ambient: ...}}'), or keep the battery outside";
    }

    /// <summary>
    /// The largest brightness at which the battery is cool enough, to a hundredth; 0 where even dark LEDs are too warm, null without one.
    /// </summary>
    internal static double? CoolEnough(HousingUnderCheck housing)
    {
        if (housing.Plan.Bay is not { } bay)
        {
            return null;
        }

        var heat = new RememberedHeat(housing.Memory);
        double limit = bay.Size.Battery.WarmestCelsius;
        if (Air(1) <= limit)
        {
            return 1;
        }

        (double cool, double warm) = (0, 1);
        for (int i = 0; i < Halvings; i++)
        {
            double middle = (cool + warm) / 2;
            (cool, warm) = Air(middle) > limit ? (cool, middle) : (middle, warm);
        }

        return Math.Floor(cool / BrightnessStep) * BrightnessStep;

        double Air(double brightness) => heat.Of(
            housing.Heat.Input with { Brightness = brightness }, housing.Heat.Coefficients)[HeatBody.InnerAir].Celsius;
    }
}
