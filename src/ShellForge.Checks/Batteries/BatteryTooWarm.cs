using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.Heat;
using ShellForge.Checks.Power;
using ShellForge.Physics.Heat;

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
        return housing.Heat.BatteryBrightness is double cool && BrightnessCap.Remedy(housing, cool) is { } dimmed
            ? $"{dimmed}, {vents}or keep the battery outside"
            : $"dimming alone does not help: {vents}use it in a cooler place ('use: {{ambient: ...}}'), or keep the battery outside";
    }
}
