using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Fit;

/// <summary>A screw that does not hold enough thread.</summary>
public sealed class ScrewEngagement() : Rule(
    "screw-engages-too-little",
    "A screw must hold enough thread of its insert.",
    "A screw that catches one thread strips it, and the part comes off when the cable is pulled.",
    "thread in the insert = length - clamp - depth of the insert's top; below 0.8 thread diameters it stops, below the wanted engagement "
        + "it warns",
    "0.8 x thread diameter in brass at least, 1.3 x as default, never more than the insert is long less 0.5 mm")
{
    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        foreach (ScrewJointPlan joint in housing.Plan.Screws)
        {
            double engagement = Math.Round(joint.Engagement, 3);
            double least = Math.Min(joint.Screw.EngagementMinimum, joint.EngagementWanted);
            if (engagement < Math.Round(joint.EngagementWanted, 3))
            {
                yield return Found(
                    engagement < Math.Round(least, 3) ? Severity.Stop : Severity.Warn, joint.Name,
                    $"{joint.Screw.Name} x {joint.Length:0.#} holds only {engagement:0.0} mm of thread in its insert; it needs "
                        + $"{joint.EngagementWanted:0.0}",
                    engagement, joint.EngagementWanted, new Point3(joint.At.X, joint.At.Y, joint.SeatZ),
                    "choose a screw that is sold in longer lengths, leave the washer out, or take a longer insert");
            }
        }
    }
}
