using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;

namespace ShellForge.Checks.Fit;

/// <summary>A stretch of wall that has to serve too much at a time.</summary>
public sealed class CrowdedSector() : Rule(
    "crowded-sector",
    "Port, boss, cable exit, mount, key and pry notch should not meet in one stretch of the rim.",
    "Each weakens the wall there or is in the way of a hand; turning one of them by a few degrees is free on paper.",
    "as planned: features within 7.5 mm along the rim to either side of an opening",
    "practice: 15 mm of rim")
{
    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing) => housing.Plan.Crowded.Select(crowded => Found(
        Severity.Note, crowded.Ref,
        $"within {crowded.Within} mm beside its opening stand: {string.Join(", ", crowded.Others.Select(each => each.What))}",
        crowded.Others[0].Along, crowded.Within, crowded.InWall.Middle,
        "turn one of them on the board if the wall cracks there or a hand does not get to it"));
}
