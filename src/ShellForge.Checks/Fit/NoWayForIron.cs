using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Fit;

/// <summary>An insert that a soldering iron cannot set straight.</summary>
public sealed class NoWayForIron() : Rule(
    "no-way-for-iron",
    "A soldering iron must stand upright over every insert's hole without touching plastic beside it.",
    "An iron held at a slant sets the insert at a slant, and a barrel at 250 degrees melts what it touches.",
    "distance from the boss's axis to every section of the tub above its top, less the iron's radius there: 3 mm up to 20 mm above the "
        + "insert, 6 mm higher up; below 0 stops, below 0.3 mm warns",
    "typical tip for setting inserts; measure yours")
{
    private const double TipRadius = 3;
    private const double BarrelRadius = 6;
    private const double TipLength = 20;
    private const double Wanted = 0.3;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        if (housing.Part(PartNames.Tub) is not { } tub)
        {
            yield break;
        }

        foreach (BossPlan boss in housing.Plan.Bosses.Where(boss => boss.Hole is not null))
        {
            double least = double.PositiveInfinity;
            double at = boss.Top;
            foreach (SectionSlab slab in housing.SectionsOf(tub).Where(slab => slab.FromZ >= boss.Top && !slab.Outline.IsEmpty))
            {
                double gap = slab.Outline.Distance(boss.At) - (slab.ToZ > boss.Top + TipLength ? BarrelRadius : TipRadius);
                if (gap < least)
                {
                    (least, at) = (gap, slab.FromZ);
                }
            }

            if (Math.Round(least, 3) < Wanted)
            {
                yield return Found(
                    least < 0 ? Severity.Stop : Severity.Warn, boss.Name,
                    least < 0 ? $"the iron meets the tub's wall {-least:0.0} mm before it stands straight over the insert"
                        : $"the iron has {least:0.0} mm to the tub's wall over its insert",
                    least, Wanted, new Point3(boss.At.X, boss.At.Y, at),
                    "move the hole away from the wall, or set this insert with a slimmer tip before anything else; hot iron and fumes: "
                        + "ventilate, hold the part in a vice");
            }
        }
    }
}
