using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Fit;

/// <summary>A screw that meets the bottom of its hole before its head seats.</summary>
public sealed class ScrewBottomsOut() : Rule(
    "screw-bottoms-out",
    "A screw's tip must stay clear of the bottom of its hole.",
    "A screw 2 mm too long feels tight, holds nothing, and at the next turn pushes insert and floor out.",
    "depth of the hole below the head's seat - screw length, against 0.5 mm (0 stops)",
    "practice: stock lengths vary by 0.4 mm and melt rises in the hole")
{
    private const double Wanted = 0.5;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        foreach (ScrewJointPlan joint in housing.Plan.Screws)
        {
            double gap = Math.Round(joint.TipGap, 3);
            if (gap < Wanted)
            {
                yield return Found(
                    gap < 0 ? Severity.Stop : Severity.Warn, joint.Name,
                    gap < 0
                        ? $"{joint.Screw.Name} x {joint.Length:0.#} meets the bottom of its hole {-gap:0.0} mm before its head seats"
                        : $"the tip of {joint.Screw.Name} x {joint.Length:0.#} ends {gap:0.0} mm above the bottom of its hole",
                    gap, Wanted, new Point3(joint.At.X, joint.At.Y, joint.SeatZ - joint.Length),
                    "take the next shorter stock length, add a washer, or raise the standoffs");
            }
        }
    }
}
