using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Fit;

/// <summary>A screw that no driver reaches.</summary>
public sealed class NoWayForDriver() : Rule(
    "no-way-for-driver",
    "A straight driver must reach every screw head, past whatever is in place when it is driven.",
    "A bit that leans on a wall strips the head, or scrapes along an LED.",
    "least distance from the screw's axis above its head to tub walls, parts and LEDs (screws of board and clamp ring), or to the "
        + "cover (closure screws), "
        + "less the driver's radius; below 0 stops, below 0.05 mm warns",
    "driver diameter as listed in the screw profile")
{
    private const double Wanted = 0.05;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        BoardBody[] bodies = [.. BoardBody.Of(housing.Plan)];
        foreach (ScrewJointPlan joint in housing.Plan.Screws.Where(joint => joint.FromFront))
        {
            double radius = joint.Screw.DriverDiameter / 2;
            double head = joint.SeatZ + joint.Screw.HeadHeight + (joint.Washer ? joint.Screw.WasherThickness : 0);
            (double Distance, double Z, string What) nearest = (double.PositiveInfinity, 0, "");
            string inPlace = joint.Use == ScrewUse.Closure ? PartNames.Cover : PartNames.Tub;
            foreach (MadePart part in housing.SoundParts.Where(part => part.Name == inPlace))
            {
                foreach (SectionSlab slab in housing.SectionsOf(part).Where(slab => slab.ToZ > head))
                {
                    Nearer(slab.Outline, joint.At, Math.Max(slab.FromZ, head), $"the {part.Name}", ref nearest);
                }
            }

            foreach (BoardBody body in joint.IsInTub ? bodies : [])
            {
                if (body.ToZ > head && !HeadAgainstPart.Tells(housing, body.Ref))
                {
                    Nearer(body.Outline, joint.At, body.ToZ, body.Ref, ref nearest);
                }
            }

            double gap = nearest.Distance - radius;
            if (Math.Round(gap, 3) < Wanted)
            {
                yield return Found(
                    gap < 0 ? Severity.Stop : Severity.Warn, joint.Name,
                    gap < 0 ? $"a driver of {2 * radius:0.0} mm meets {nearest.What}: no straight way to its head"
                        : $"a driver of {2 * radius:0.0} mm has {gap:0.00} mm to {nearest.What}",
                    gap, Wanted, new Point3(joint.At.X, joint.At.Y, nearest.Z),
                    "choose a head that takes a thinner driver, use a slimmer bit and correct the screw's profile, or move the hole away "
                        + "from what stands beside it");
            }
        }
    }

    private static void Nearer(Region outline, Point2 axis, double z, string what, ref (double Distance, double Z, string What) nearest)
    {
        double distance = outline.IsEmpty ? double.PositiveInfinity : outline.Distance(axis);
        if (distance < nearest.Distance)
        {
            nearest = (distance, z, what);
        }
    }
}
