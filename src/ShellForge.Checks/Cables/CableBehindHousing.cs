using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Cables;

/// <summary>A cable that leaves towards what the housing is put on, without room to bend away.</summary>
public sealed class CableBehindHousing() : Rule(
    "cable-behind-housing",
    "A cable that leaves through the floor needs a hole in what the housing is put on, or free air to bend in.",
    "Pinched between floor and table the cable lifts the housing off, and its jacket wears through.",
    "free air between the outer floor and the surface, as the mount gives it (none without a mount), against four times the cable's "
        + "diameter; where holes are drilled for the mount one more is a note",
    "4 x outside diameter for what is fixed: common norm for cables")
{
    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        double air = housing.Plan.Mount?.OffSurface ?? 0;
        bool drilled = housing.Plan.Mount?.Drilling is not null;
        foreach (CableExitPlan exit in housing.Plan.CableExits)
        {
            if (exit.ThroughSurface is not { } hole || air >= hole.Bend)
            {
                continue;
            }

            yield return Found(
                drilled ? Severity.Note : Severity.Warn, exit.Subject,
                $"the cable leaves through the floor, {air:0.0} mm off what the housing is put on; to bend away it needs "
                    + $"{hole.Bend:0.0} mm",
                air, hole.Bend,
                new Point3(hole.At.X, hole.At.Y, 0),
                drilled
                    ? $"drill a hole of {hole.Diameter:0} mm for the cable too: drill-template.svg shows it"
                    : $"a hole of {hole.Diameter:0} mm in what it is put on, 'mount: stand' or 'mount: tripod', or "
                        + "'cable: {through: wall}'");
        }
    }
}
