using System.Globalization;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Physics.Heat;
using ShellForge.Physics.Power;

namespace ShellForge.Checks.Heat;

/// <summary>Plastic above what its filament bears.</summary>
public sealed class PlasticTooWarm() : Rule(
    "plastic-too-warm",
    "Walls, posts and baffle must stay below their filament's service limit in the warmest surrounding air.",
    "A warm shell sags, snaps let go and screws lose their hold, after an hour that nobody watches.",
    "steady heat network of LEDs, controller, board, inner air and both faces of each wall; the warmest of the walls' inner faces and the board, on which posts and baffle lie",
    "service limit of the filament's profile; coefficients under 'heat' in the report, each with its range and source")
{
    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        HousingHeat heat = housing.Heat;
        bool capped = housing.Board.Power.Capped;
        double limit = heat.PlasticLimitCelsius;
        NodeTemperature planned = heat.Planned.WarmestPlastic;
        NodeTemperature full = heat.FullWhite.WarmestPlastic;
        NodeTemperature told = planned.Celsius > limit || capped ? planned : full;
        string remedy = string.Create(
            CultureInfo.InvariantCulture,
            $"cap the firmware's brightness at {PowerModel.FirmwareCap(heat.LargestBrightness)} of 255 ({100 * heat.LargestBrightness:0} %) and say 'capped: true', vents in free air, or a filament that bears more");
        if (told.Celsius > limit)
        {
            yield return Found(
                planned.Celsius > heat.PlasticSoftensCelsius ? Severity.Stop : Severity.Warn, told.Name,
                Text(told, heat, told.Name == planned.Name && told.Celsius == planned.Celsius ? "at the planned brightness" : "at full white, which the firmware does not cap,"),
                told.Celsius, limit, Places.OfBody(housing, told.Name), remedy, "degC");
        }
        else if (told.Celsius + told.PlusMinus > limit)
        {
            yield return Found(
                Severity.Note, told.Name, Text(told, heat, capped ? "at the planned brightness" : "at full white"), told.Celsius, limit,
                Places.OfBody(housing, told.Name),
                "the margin is smaller than the model's uncertainty: measure the warm lamp once with a thermometer", "degC");
        }

        if (told.Celsius <= limit && full.Celsius > limit)
        {
            yield return Found(
                Severity.Note, full.Name, Text(full, heat, "at full white"), full.Celsius, limit, Places.OfBody(housing, full.Name),
                string.Create(CultureInfo.InvariantCulture, $"keep the firmware's cap: {PowerModel.FirmwareCap(housing.Board.Power.Brightness)} of 255 is planned ({planned.Celsius:0} degC), {PowerModel.FirmwareCap(heat.LargestBrightness)} is the most"),
                "degC");
        }
    }

    private static string Text(NodeTemperature node, HousingHeat heat, string when) => string.Create(
        CultureInfo.InvariantCulture,
        $"{when} plastic at the {node.Name} gets {node.Celsius:0} degC (give or take {node.PlusMinus:0} K); {heat.WeakestFilament} bears {heat.PlasticLimitCelsius:0}");
}
