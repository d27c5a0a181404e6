using ShellForge.Board.Description;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Planning;

namespace ShellForge.Checks.Batteries;

/// <summary>A battery that nothing on the board is wired to.</summary>
public sealed class BatteryWithoutLeads() : Rule(
    "battery-without-leads",
    "A battery's wires must go to the board: to a connector, or to pads for them.",
    "Wires without a place of their own end up across the LEDs' pads, and are too short or pinched under the board.",
    "wires of the board that go to the battery, and the connector that takes its plug, counted from the board file",
    "counted from the board file")
{
    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        if (housing.Plan.Bay is { } bay && BatteryHands.Ends(housing.Plan).IsEmpty)
        {
            yield return Found(
                Severity.Warn, "battery", "no wire of the board goes to it", 0, 1, bay.Middle,
                $"'to: {BatterySpec.WireWord}' at one of the 'wires', or 'battery: {{plug: ...}}' with the connector that takes its plug",
                "");
        }
    }
}
