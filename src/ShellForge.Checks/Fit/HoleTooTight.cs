using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Fit;

/// <summary>A printed clearance hole that its screw does not pass once the plastic has shrunk.</summary>
public sealed class HoleTooTight() : Rule(
    "hole-too-tight",
    "A printed clearance hole must pass its screw after the hole has shrunk.",
    "A screw that cuts its own thread in the cover feels tight and clamps nothing.",
    "hole in the section of the cover as made, less what upright holes lose in print, against thread + 0.2 mm (the thread itself stops)",
    "ISO 273 fine; hole allowance of the printer profile")
{
    private const double Ease = 0.2;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        foreach (ScrewJointPlan joint in housing.Plan.Screws)
        {
            if (housing.Part(joint.Through) is not { } part)
            {
                continue;
            }

            double z = joint.SeatZ - 0.3;
            Region? section = housing.SectionsOf(part).Where(slab => slab.FromZ <= z && slab.ToZ > z).Select(slab => slab.Outline)
                .FirstOrDefault();
            if (section is null || section.IsEmpty)
            {
                continue;
            }

            double drawn = section.Contains(joint.At) ? 0 : 2 * section.DistanceToOutline(joint.At);
            double inHand = Math.Round(Math.Max(0, drawn - housing.Board.Print.Printer.HoleAllowance), 2);
            double wanted = Math.Round(joint.Screw.ThreadDiameter + Ease, 2);
            if (inHand < wanted)
            {
                yield return Found(
                    inHand < joint.Screw.ThreadDiameter ? Severity.Stop : Severity.Warn, joint.Name,
                    $"its hole in the {part.Name} will print at {inHand:0.00} mm; the screw needs {wanted:0.00}", inHand, wanted,
                    new Point3(joint.At.X, joint.At.Y, z),
                    "raise 'hole-allowance' in the printer profile to what a printed hole measures");
            }
        }
    }
}
