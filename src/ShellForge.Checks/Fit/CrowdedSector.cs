using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Fit;

/// <summary>A stretch of wall that has to serve too much at a time.</summary>
public sealed class CrowdedSector() : Rule(
    "crowded-sector",
    "Port, boss, keyhole, key and pry notch should not meet in one stretch of the rim.",
    "Each weakens the wall there or is in the way of a hand; turning one of them by a few degrees is free on paper.",
    "features within 7.5 mm along the rim to either side of a port",
    "practice: 15 mm of rim")
{
    private const double HalfSector = 7.5;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        HousingPlan plan = housing.Plan;
        double rim = plan.Shell.Footprint.Bounds.Max.X;
        foreach (PortPlan port in plan.Ports)
        {
            Angle middle = Angle.Of(port.Face);
            double Along(Angle at) => Angle.Between(at, middle).Radians * rim;
            (string What, double Along)[] near =
            [
                .. plan.Bosses.Where(boss => boss.Hole is not null).Select(boss => (boss.Name, Along(Angle.Of(boss.At)))),
                .. (plan.Mount?.AtRim ?? []).Select(each => (each.What, Along(Angle.Of(each.At)))),
                .. plan.PryNotches.Select(notch => ("a pry notch", Along(notch.At))),
                ("the key", Along(plan.Key.At)),
            ];
            (string What, double Along)[] crowd = [.. near.Where(each => each.Along < HalfSector).OrderBy(each => each.Along)];
            if (crowd.Length > 0)
            {
                yield return Found(
                    Severity.Note, port.Ref, $"within {HalfSector} mm beside its port stand: {string.Join(", ", crowd.Select(each => each.What))}",
                    crowd[0].Along, HalfSector, new Point3(port.Face.X, port.Face.Y, port.AxisZ), "turn one of them on the board if the wall cracks there or the plug is hard to reach");
            }
        }
    }
}
