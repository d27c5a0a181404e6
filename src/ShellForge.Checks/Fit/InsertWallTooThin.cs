using ShellForge.Geometry.Numerics;
using ShellForge.Planning;

namespace ShellForge.Checks.Fit;

/// <summary>Too little plastic round or under a heat-set insert.</summary>
public sealed class InsertWallTooThin() : Rule(
    "insert-wall-too-thin",
    "A boss must have enough wall round its insert and plastic under its hole.",
    "The wall bulges or splits while the insert melts in, and a thin floor lets the hot brass through.",
    "(boss diameter - hole diameter) / 2 against the insert's least wall (half of it stops); plastic under the hole against 1.2 mm (0.8 stops)",
    "insert makers' tables as listed in the insert profile; typical 0.8 to 2.0 mm of solid plastic below")
{
    private const double PlasticBelow = 1.2;
    private const double LeastPlasticBelow = 0.8;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        foreach (BossPlan boss in housing.Plan.Bosses)
        {
            if (boss.Hole is not { } hole)
            {
                continue;
            }

            double wall = (boss.Diameter - hole.MouthDiameter) / 2;
            double wanted = hole.Insert.WallThickness;
            if (wall < wanted)
            {
                yield return Found(
                    wall < wanted / 2 ? Severity.Stop : Severity.Warn, boss.Name, $"{wall:0.00} mm of plastic round the insert, {wanted:0.00} are wanted",
                    wall, wanted, new Point3(boss.At.X, boss.At.Y, boss.Top), "take an insert with a smaller body, or move the hole away from the wall");
            }

            if (hole.PlasticBelow < PlasticBelow)
            {
                yield return Found(
                    hole.PlasticBelow < LeastPlasticBelow ? Severity.Stop : Severity.Warn, boss.Name,
                    $"{hole.PlasticBelow:0.00} mm of plastic under the insert's hole", hole.PlasticBelow, PlasticBelow,
                    new Point3(boss.At.X, boss.At.Y, boss.Top - hole.Depth), "raise the standoffs ('clearance: {below-parts: ...}'), thicken the floor, or take a shorter insert");
            }
        }
    }
}
