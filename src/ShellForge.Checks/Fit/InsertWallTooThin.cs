using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Fit;

/// <summary>Too little plastic round or under a heat-set insert.</summary>
public sealed class InsertWallTooThin() : Rule(
    "insert-wall-too-thin",
    "A boss must have enough wall round its insert and plastic under its hole.",
    "The wall bulges or splits while the insert melts in, and a thin floor lets the hot brass through.",
    "sections of the tub as made at top, middle and bottom of the insert: least plastic along rays from the hole's axis, against the "
        + "insert's least wall (half of it stops); plastic straight under the hole against 1.2 mm (0.8 stops)",
    "insert makers' tables as listed in the insert profile; typical 0.8 to 2.0 mm of solid plastic below")
{
    private const double PlasticBelow = 1.2;
    private const double LeastPlasticBelow = 0.8;

    // Chords of a round hole and boss, mm (modelling).
    private const double Chords = 0.02;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        if (housing.Part(PartNames.Tub) is not { } tub)
        {
            yield break;
        }

        foreach (BossPlan boss in housing.Plan.Bosses)
        {
            if (boss.Hole is not { } hole)
            {
                continue;
            }

            double wanted = hole.Insert.WallThickness;
            (double Wall, Point3 At) thinnest = Thinnest(housing, tub, boss, hole);
            if (thinnest.Wall < wanted - Chords)
            {
                yield return Found(
                    thinnest.Wall < wanted / 2 ? Severity.Stop : Severity.Warn, boss.Name,
                    $"the plastic round its insert is {thinnest.Wall:0.00} mm thick; the insert needs {wanted:0.00}", thinnest.Wall, wanted,
                    thinnest.At,
                    "take an insert with a smaller body, or move the hole away from what cuts into its boss");
            }

            var bottom = new Point3(boss.At.X, boss.At.Y, boss.Top - hole.Depth);
            double below =
                Math.Round(
                    RayCast.First(housing.TreeOf(tub), bottom with { Z = bottom.Z + 0.01 }, new Point3(0, 0, -1),
                        RayFaces.Leaving) is { } under
                ? bottom.Z - under.At.Z : 0, 3);
            if (below < PlasticBelow)
            {
                yield return Found(
                    below < LeastPlasticBelow ? Severity.Stop : Severity.Warn, boss.Name,
                    $"only {below:0.00} mm of plastic is left under its insert's hole", below, PlasticBelow, bottom,
                    "raise the standoffs ('clearance: {below-parts: ...}'), thicken the floor, or take a shorter insert");
            }
        }
    }

    private static (double Wall, Point3 At) Thinnest(HousingUnderCheck housing, MadePart tub, BossPlan boss, InsertHolePlan hole)
    {
        (double Wall, Point3 At) thinnest = (double.PositiveInfinity, default);
        double top = boss.Top - hole.SetBelow - hole.LeadIn;
        foreach (SectionSlab slab in housing.SectionsOf(tub)
            .Where(slab => slab.FromZ < top && slab.ToZ > boss.Top - hole.SetBelow - hole.Insert.Length))
        {
            double z = Math.Clamp((slab.FromZ + slab.ToZ) / 2, boss.Top - hole.Depth, top);
            if (RadialWall.Least(slab.Outline, boss.At, hole.MouthDiameter / 2) is { } wall && wall.Thickness < thinnest.Wall)
            {
                Point2 at = boss.At + Point2.Polar((hole.MouthDiameter / 2) + (wall.Thickness / 2), wall.At);
                thinnest = (wall.Thickness, new Point3(at.X, at.Y, z));
            }
        }

        return thinnest;
    }
}
