using System.Globalization;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Physics.Power;

namespace ShellForge.Checks.Power;

/// <summary>A lead too thin for its current.</summary>
public sealed class LeadTooThin() : Rule(
    "lead-too-thin",
    "Soldered leads must carry their current without getting warm or losing voltage.",
    "Free-air tables promise far more than a bundle in a warm housing carries.",
    "largest current that the firmware allows, strongest dies, against the enclosed rating; drop over the pair against 0.25 V",
    "wire notes of the trade, enclosed and bundled; cables that leave the housing count 1 m")
{
    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        foreach (LeadPower lead in housing.Power.Leads)
        {
            if (lead.Wire.Gauge is not int gauge)
            {
                continue;
            }

            double rated = lead.Gauge?.EnclosedAmps ?? 0;
            double drop = lead.Gauge?.PairDropVolts(lead.Metres, lead.Amps) ?? double.PositiveInfinity;
            string better = lead.Thinnest is { } wire ? $"gauge {wire.Gauge} or thicker"
                : "two pairs side by side, or a lower 'brightness' with 'capped: true'";
            var at = new Point3(lead.Wire.At.X, lead.Wire.At.Y, housing.Plan.Stack.BoardBottom);
            if (lead.Amps > rated)
            {
                yield return Found(
                    Severity.Warn, lead.Wire.Name,
                    string.Create(CultureInfo.InvariantCulture,
                        $"'{lead.Wire.Name}' of gauge {gauge} carries up to {lead.Amps:0.00} A (worst LEDs): inside a housing it is good "
                            + $"for {rated:0.##} A."),
                    lead.Amps, rated, at, better, "A");
            }
            else if (drop > PowerModel.DropBudgetVolts)
            {
                yield return Found(
                    Severity.Warn, lead.Wire.Name,
                    string.Create(CultureInfo.InvariantCulture,
                        $"'{lead.Wire.Name}' of gauge {gauge} loses {drop:0.00} V over {lead.Metres:0.##} m; "
                            + $"{PowerModel.DropBudgetVolts:0.##} V is the most."),
                    drop, PowerModel.DropBudgetVolts, at, better, "V");
            }
        }
    }
}
