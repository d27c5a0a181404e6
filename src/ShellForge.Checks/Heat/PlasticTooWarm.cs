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
    "steady heat of LEDs, controller, board, air and walls, ring by ring round the axis; the warmest place of the walls' inner faces and "
        + "of the board, on which posts and baffle lie. One finding at most: it stops where usual LEDs bring the plastic past its glass "
        + "transition at the planned brightness; warns where usual LEDs bring it past its service limit at the brightness that the "
        + "firmware allows; is a note where only the upper end of the range does (strongest LEDs of that name, every coefficient at its "
        + "end), which is too close to call, or where only full white does, from which a cap keeps it",
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
        bool atPlanned = capped || planned.Celsius > limit;
        NodeTemperature told = atPlanned ? planned : full;
        string bears = string.Create(CultureInfo.InvariantCulture, $"{heat.WeakestFilament} is good to {limit:0} \u00b0C");
        string reached = string.Create(
            CultureInfo.InvariantCulture,
            $"{HeatWords.When(housing, atPlanned)} {HeatWords.Where(told.Body)} reaches {HeatWords.Range(told)}: {bears}");
        int most = PowerModel.FirmwareCap(heat.LargestBrightness);
        if (told.Celsius > limit)
        {
            yield return Found(
                planned.Celsius > heat.PlasticSoftensCelsius ? Severity.Stop : Severity.Warn, told.Body.InWords(), reached + ".",
                told.Celsius, limit, Places.OfBody(housing, told.Body), HeatWords.Cooler(housing, told.High), "\u00b0C");
        }
        else if (told.High > limit)
        {
            string fullToo = atPlanned && full.Celsius > limit
                ? string.Create(CultureInfo.InvariantCulture, $" At full white: {full.Celsius:0} \u00b0C.") : "";
            yield return Found(
                Severity.Note, told.Body.InWords(), $"{reached}, too close to call.{fullToo}", told.High, limit,
                Places.OfBody(housing, told.Body),
                most > 0
                    ? string.Create(CultureInfo.InvariantCulture,
                        $"measure the warm lamp once with a thermometer; at or below {most} of 255 it holds with any LED of that name")
                    : "measure the warm lamp once with a thermometer"
                        + (HeatWords.Filament(housing, told.High) is { } filament ? ", or " + filament : ""),
                "\u00b0C");
        }
        else if (full.Celsius > limit)
        {
            yield return Found(
                Severity.Note, full.Body.InWords(),
                string.Create(CultureInfo.InvariantCulture,
                    $"At full white {HeatWords.Where(full.Body)} would reach {full.Celsius:0} \u00b0C: {bears}. "
                        + $"{HeatWords.Yours(housing)} it stays at {HeatWords.Range(planned)}."),
                full.Celsius, limit, Places.OfBody(housing, full.Body),
                string.Create(CultureInfo.InvariantCulture, $"keep the firmware at or below {most} of 255"), "\u00b0C");
        }
    }
}
