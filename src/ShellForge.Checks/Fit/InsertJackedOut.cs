using ShellForge.Board.Description;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Fit;

/// <summary>An insert that its own screw pulls out of the plastic.</summary>
public sealed class InsertJackedOut() : Rule(
    "insert-jacked-out",
    "What a screw clamps must lie on the boss round the insert, and its hole must be narrower than the insert.",
    "With a gap between the two, or a hole as wide as the insert, the screw lifts the insert out of the boss instead of clamping.",
    "gap along z between boss and what lies on it, beside the insert, against 0.3 mm (1.0 stops); the hole over the insert against its "
        + "outer diameter less 0.4 mm",
    "fastener practice: a clearance hole smaller than the insert; typical for printed bosses")
{
    private const double MostGap = 0.3;
    private const double StopGap = 1.0;
    private const double Overlap = 0.4;

    // Faces that lie on each other are found from a little way off, mm: far more than the lattice rounds.
    private const double Hair = 0.05;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        foreach (ScrewJointPlan joint in housing.Plan.Screws)
        {
            BossPlan boss = joint.Boss;
            if (boss.Hole is not { } hole)
            {
                continue;
            }

            var at = new Point3(boss.At.X, boss.At.Y, boss.Top);
            BoardHole? inBoard = housing.Board.Board.Holes.FirstOrDefault(h => h.At == joint.At);
            double over = joint.Through == PartNames.Board || boss.Use == BossUse.Both ? inBoard?.Diameter ?? 0 : joint.PassDiameter;
            double widest = hole.Insert.OuterDiameter - Overlap;
            if (over > widest)
            {
                yield return Found(
                    over > hole.Insert.OuterDiameter ? Severity.Stop : Severity.Warn, joint.Name,
                    $"the hole over its insert is {over:0.0} mm wide, the insert {hole.Insert.OuterDiameter.Value:0.0}: nothing holds the "
                        + $"insert down",
                    over, widest, at, "drill the hole for the screw only, or take an insert with a larger body");
            }

            if (Gap(housing, joint, boss) is double gap && gap > MostGap)
            {
                yield return Found(
                    gap > StopGap ? Severity.Stop : Severity.Warn, joint.Name,
                    $"what it clamps ends {gap:0.0} mm above its boss: tightening pulls the insert up", gap, MostGap, at,
                    "bring the boss up to what it carries, or clamp with a spacer of that height");
            }
        }
    }

    // Straight up from the boss's rim beside the insert, to whatever is clamped there; the solids as made, not the plan. The middle of
    // eight places: a neighbour's hole may cut into the rim.
    private static double? Gap(HousingUnderCheck housing, ScrewJointPlan joint, BossPlan boss)
    {
        bool onBoard = joint.Through == PartNames.Board || boss.Use == BossUse.Both;
        if (housing.Part(PartNames.Tub) is not { } tub || (!onBoard && housing.Part(joint.Through) is null))
        {
            return null;
        }

        double ring = (boss.Hole!.MouthDiameter / 2) + boss.Hole.LeadIn;
        double radius = (ring + Math.Max(ring, boss.Diameter / 2)) / 2;
        double[] gaps = new double[8];
        for (int i = 0; i < gaps.Length; i++)
        {
            Point2 beside = boss.At + Point2.Polar(radius, Angle.FromDegrees(45 * i));
            var start = new Point3(beside.X, beside.Y, housing.Plan.Stack.Front + 1);
            double clamped = onBoard
                ? housing.Plan.Stack.BoardBottom
                : RayCast.First(housing.TreeOf(housing.Part(joint.Through)!), start with { Z = boss.Top - Hair }, new Point3(0, 0, 1),
                    RayFaces.Entering)?.At.Z ?? double.PositiveInfinity;
            double top =
                RayCast.First(housing.TreeOf(tub), start with { Z = Math.Min(clamped + Hair, start.Z) }, new Point3(0, 0, -1),
                    RayFaces.Entering)?.At.Z ?? 0;
            gaps[i] = clamped - top;
        }

        double middle = gaps.Order().ElementAt(gaps.Length / 2);
        return double.IsFinite(middle) ? Math.Round(middle, 3) : null;
    }
}
