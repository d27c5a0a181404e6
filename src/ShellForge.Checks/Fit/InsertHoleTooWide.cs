using ShellForge.Board.Profiles;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Fit;

/// <summary>A hole in which the insert finds nothing to melt.</summary>
public sealed class InsertHoleTooWide() : Rule(
    "insert-hole-too-wide",
    "The insert's hole must be smaller than its knurl by at least 0.3 mm, as drawn and as its profile says.",
    "With less plastic to displace, the knurl does not bite and the insert turns with the screw.",
    "knurl diameter - hole diameter as drawn, and as the profile has it, against 0.3 mm",
    "insert makers' notes: 0.25 to 0.6 mm below the knurl; charts that give the hole as 'outer diameter' are known")
{
    private const double Bite = 0.3;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        foreach (BossPlan boss in housing.Plan.Bosses)
        {
            if (boss.Hole is { Insert.IsHoleMeasured: false } hole && Math.Round(hole.Insert.OuterDiameter - hole.Diameter, 3) is var bite
                && bite < Bite)
            {
                yield return Found(
                    Severity.Stop, boss.Name,
                    $"its hole is only {bite:0.00} mm smaller than the knurl of {hole.Insert.Name}: the insert will turn", bite, Bite,
                    new Point3(boss.At.X, boss.At.Y, boss.Top),
                    "correct the insert's profile: outer diameter is measured over the knurl, the hole as drawn");
            }
        }

        // The plan keeps the hole small enough, but a profile that contradicts itself has one of its two numbers wrong.
        foreach (IGrouping<InsertProfile, BossPlan> kind in housing.Plan.Bosses.Where(boss => boss.Hole is not null)
            .GroupBy(boss => boss.Hole!.Insert))
        {
            double bite = Math.Round(kind.Key.OuterDiameter - kind.Key.HoleDiameter, 3);
            if (bite < Bite)
            {
                BossPlan first = kind.First();
                yield return Found(
                    Severity.Stop, kind.Key.Name,
                    $"its profile gives {kind.Key.OuterDiameter.Value:0.00} mm over the knurl and a hole of "
                        + $"{kind.Key.HoleDiameter.Value:0.00}: one of them can't be right, and the insert may turn",
                    bite, Bite, new Point3(first.At.X, first.At.Y, first.Top), "measure the insert over its knurl and correct the profile");
            }
        }
    }
}
