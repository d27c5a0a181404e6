using System.Globalization;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Light;

/// <summary>Light that finds a way out past the window.</summary>
public sealed class LightEscapes() : Rule(
    "light-escapes",
    "Gaps, ports and vents must not let light out.",
    "A bright line at a seam draws the eye more than the window does.",
    "share of the LEDs' light that leaves through no window after at most three reflections, followed ray by ray through the solids as "
        + "assembled",
    "limit typical: half a per cent of the light in a slit is brighter than the window")
{
    private const double Seen = 0.001;
    private const double Bright = 0.005;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        if (housing.Light is { } light && light.Leaks.SeamShare > Seen)
        {
            bool bright = light.Leaks.SeamShare > Bright;
            yield return Found(
                bright ? Severity.Warn : Severity.Note, "seams",
                string.Create(CultureInfo.InvariantCulture, $"{100 * light.Leaks.SeamShare:0.##} % of the light gets out past the window"),
                light.Leaks.SeamShare, bright ? Bright : Seen, light.Leaks.SeamFrom,
                (housing.Plan.Baffle is { Filament.Absorbs: true } ? "tape over the gap inside"
                    : "a darker baffle ('print.baffle'), or tape over the gap inside")
                    + (housing.Plan.Openings.Any(opening => opening is OwnOpeningPlan) ? "; it may be an opening of your own" : ""), "");
        }
    }
}
