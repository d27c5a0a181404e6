using System.Globalization;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Light;

/// <summary>Light along the LEDs less even than asked.</summary>
public sealed class DotsShow() : Rule(
    "dots-show",
    "Along each circle of LEDs, and between neighbours that lie on none, the diffuser must be as evenly lit as 'evenness' asks.",
    "Dots in a band that should glow are the first thing that anyone sees, and they are found after the print.",
    "smallest over mean of the light that leaves the diffuser along the pitch circle or from LED to LED, all LEDs white: rays from every "
        + "LED past the real walls, all reflections, spread in the sheet; with cells, over the middle 80 % of the worst cell; ribs behind "
        + "a band in the wall left out",
    "asked for in the board file (even 0.9, soft 0.6, dots 0.35); optics of the filament are typical: print a coupon")
{
    // The model's own noise: what a grid of other cells or another place in it changes.
    private const double Slack = 0.02;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        double wanted = housing.Board.Housing.Light.MinimumOverMean;
        if (housing.Light is not { Circles.IsEmpty: false } light)
        {
            yield break;
        }

        CircleLight worst = light.Circles.MinBy(circle => circle.Along.MinimumOverMean)!;
        if (worst.Along.MinimumOverMean < wanted - Slack)
        {
            yield return Found(
                Severity.Warn, PartNames.Diffuser,
                string.Create(CultureInfo.InvariantCulture,
                    $"the dimmest place {Along(worst)} has {100 * worst.Along.MinimumOverMean:0} % of the mean light; "
                        + $"'{housing.Board.Housing.Light.EvennessWord}' asks for {100 * wanted:0} %"),
                worst.Along.MinimumOverMean, wanted, worst.Least,
                DiffuserWords.MoreEven(housing, worst.Along.MinimumOverMean), "");
        }
    }

    private static string Along(CircleLight light) => light.Circle is { } circle
        ? string.Create(CultureInfo.InvariantCulture, $"along the circle of {circle.Diameter:0.#} mm") : "between neighbouring LEDs";
}
