using ShellForge.Geometry.Numerics;
using ShellForge.Planning;

namespace ShellForge.Checks.Fit;

/// <summary>A hole in which the insert finds nothing to melt.</summary>
public sealed class InsertHoleTooWide() : Rule(
    "insert-hole-too-wide",
    "The insert's hole must be smaller than its knurl by at least 0.3 mm.",
    "With less plastic to displace, the knurl does not bite and the insert turns with the screw.",
    "knurl diameter - hole diameter as drawn, against 0.3 mm",
    "insert makers' notes: 0.25 to 0.6 mm below the knurl")
{
    private const double Bite = 0.3;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        foreach (BossPlan boss in housing.Plan.Bosses)
        {
            if (boss.Hole is { } hole && hole.Insert.OuterDiameter - hole.Diameter is var bite && Math.Round(bite, 3) < Bite)
            {
                yield return Found(
                    Severity.Stop, boss.Name, $"its hole leaves {bite:0.00} mm for the knurl of {hole.Insert.Name} to bite into", bite, Bite,
                    new Point3(boss.At.X, boss.At.Y, boss.Top), "correct the insert's profile: outer diameter is measured over the knurl, the hole as drawn");
            }
        }
    }
}
