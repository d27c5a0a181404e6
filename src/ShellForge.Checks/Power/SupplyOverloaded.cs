using System.Globalization;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Physics.Power;
using ShellForge.Planning.Hands;

namespace ShellForge.Checks.Power;

/// <summary>More current than the supply gives.</summary>
public sealed class SupplyOverloaded() : Rule(
    "supply-overloaded",
    "The board must not draw more than the supply gives in continuous use.",
    "A port that is asked for too much lowers its voltage or switches off: colours turn pink and the controller starts again.",
    "idle + (full white - idle) x brightness + controller, all LEDs white, with the strongest dies that ship under the LED's name, "
        + "against 80 % of the supply",
    "LED and supply profiles; 80 % is trade practice for cable drop and peaks")
{
    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        BoardPower power = housing.Power;
        double allowed = PowerModel.SupplyUse * power.Input.SupplyAmps;
        bool capped = housing.Board.Power.Capped;
        string supply = housing.Board.Power.Supply;
        string percent = HandWords.Percent(housing.Board.Power.Brightness);
        if (power.LargestAmps > allowed)
        {
            string when = capped ? $"At {percent}" : "At full white, which the firmware does not cap";
            yield return Found(
                Severity.Warn, supply,
                string.Create(CultureInfo.InvariantCulture,
                    $"{when}: up to {power.LargestAmps:0.00} A (worst LEDs), too much for this supply ({allowed:0.0#} A, 80 % of its "
                        + $"{power.Input.SupplyAmps:0.##} A)."),
                power.LargestAmps, allowed, Places.OfFeed(housing), PowerWords.Less(housing, allowed), "A");
        }
        else if (power.Result.StrongestAmps > allowed)
        {
            double within = power.Result.BrightnessWithin(power.Input, allowed);
            yield return Found(
                Severity.Note, supply,
                string.Create(CultureInfo.InvariantCulture,
                    $"At full white: up to {power.Result.StrongestAmps:0.00} A (worst LEDs), too much for this supply ({allowed:0.0#} A, "
                        + $"80 % of its {power.Input.SupplyAmps:0.##} A). At your {percent}: {power.LargestAmps:0.00} A."),
                power.Result.StrongestAmps, allowed, Places.OfFeed(housing),
                string.Create(CultureInfo.InvariantCulture,
                    $"keep the firmware at or below {PowerModel.FirmwareCap(within)} of 255"), "A");
        }
    }
}
