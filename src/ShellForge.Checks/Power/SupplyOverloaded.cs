using System.Globalization;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Physics.Power;

namespace ShellForge.Checks.Power;

/// <summary>More current than the supply gives.</summary>
public sealed class SupplyOverloaded() : Rule(
    "supply-overloaded",
    "The board must not draw more than the supply gives in continuous use.",
    "A port that is asked for too much lowers its voltage or switches off: colours turn pink and the controller starts again.",
    "idle + (full white - idle) x brightness + controller, all LEDs white, with the strongest dies that ship under the LED's name, against 80 % of the supply",
    "LED and supply profiles; 80 % is trade practice for cable drop and peaks")
{
    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        BoardPower power = housing.Power;
        double allowed = PowerModel.SupplyUse * power.Input.SupplyAmps;
        bool capped = housing.Board.Power.Capped;
        int most = PowerModel.FirmwareCap(power.Result.AllowedBrightness);
        string supply = housing.Board.Power.Supply;
        if (power.LargestAmps > allowed)
        {
            yield return Found(
                Severity.Warn, supply,
                string.Create(CultureInfo.InvariantCulture, $"{(capped ? "at the planned brightness" : "at full white, which the firmware does not cap,")} the board draws up to {power.LargestAmps:0.00} A; {supply} gives {power.Input.SupplyAmps:0.##} A, of which 80 % are used"),
                power.LargestAmps, allowed, Places.OfFeed(housing),
                string.Create(CultureInfo.InvariantCulture, $"cap the firmware's brightness at {most} of 255 and say 'capped: true', or take a stronger supply"), "A");
        }
        else if (power.Result.StrongestAmps > allowed)
        {
            yield return Found(
                Severity.Note, supply,
                string.Create(CultureInfo.InvariantCulture, $"full white would draw up to {power.Result.StrongestAmps:0.00} A; the firmware's cap keeps it at {power.LargestAmps:0.00} A"),
                power.Result.StrongestAmps, allowed, Places.OfFeed(housing),
                string.Create(CultureInfo.InvariantCulture, $"keep the cap: {PowerModel.FirmwareCap(housing.Board.Power.Brightness)} of 255 is planned, {most} is the most for this supply"), "A");
        }
    }
}
