using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;

namespace ShellForge.Checks.Batteries;

/// <summary>A battery in a housing that does not open again.</summary>
public sealed class BatteryShutIn() : Rule(
    "battery-shut-in",
    "A battery must come out again: it ages before the rest does, and it goes to the collection of old batteries.",
    "A swollen pouch in a glued lamp can neither be changed nor thrown away rightly.",
    "closures that do not reopen, with a battery inside",
    "counted from the plan")
{
    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        if (housing.Plan.Bay is { } bay && !housing.Plan.Closure.Reopens)
        {
            yield return Found(
                Severity.Warn, "battery", "it cannot be taken out again, since the cover does not come off", 0, 1,
                bay.Middle, "'closure: screws' or 'closure: snap'", "");
        }
    }
}
