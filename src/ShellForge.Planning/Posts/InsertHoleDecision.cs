using ShellForge.Board.Profiles;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Posts;

/// <summary>Hole and boss for an insert, from its body: never from its thread alone.</summary>
public static class InsertHoleDecision
{
    /// <summary>The wall round the hole: the largest of what plastic, lines and the insert's body ask for, mm.</summary>
    public static double Wall(InsertProfile insert, PrintBasis basis) => Math.Max(
        Math.Max(PlanRules.BossWall, basis.Wall(PlanRules.BossWallLines)),
        Math.Max(PlanRules.BossWallShare * insert.OuterDiameter, insert.WallThickness));

    /// <summary>
    /// The hole as drawn, mm. The chart's value for printed parts is already compensated, so no printer allowance is added; it is
    /// only kept from being too loose; one that was tried with this printer and this filament is taken as it is.
    /// </summary>
    public static double Diameter(InsertProfile insert) =>
        insert.IsHoleMeasured ? insert.HoleDiameter : Math.Min(insert.HoleDiameter, insert.OuterDiameter - PlanRules.LeastHoleInterference);

    /// <summary>The hole at the boss's top without its lead-in, mm: wider for a tapered body.</summary>
    public static double MouthDiameter(InsertProfile insert) =>
        Diameter(insert) + (insert.Tapered ? PlanRules.TaperPerLength * insert.Length : 0);

    /// <summary>Outside diameter of the boss, mm, to 0.1 above.</summary>
    public static double BossDiameter(InsertProfile insert, PrintBasis basis) =>
        PlanRules.UpToTenth(MouthDiameter(insert) + (2 * Wall(insert, basis)));

    /// <summary>Depth for the insert alone: its length and room for the melt, whole layers, mm.</summary>
    public static double Depth(InsertProfile insert, PrintBasis basis) =>
        basis.UpDistance(insert.Length + PlanRules.MeltRoom);

    /// <summary>The hole of a boss whose top and depth are known.</summary>
    public static InsertHolePlan Plan(InsertProfile insert, double top, double depth) => new()
    {
        Insert = insert,
        Diameter = Diameter(insert),
        MouthDiameter = MouthDiameter(insert),
        Depth = depth,
        LeadIn = insert.Tapered ? 0 : PlanRules.LeadIn,
        SetBelow = PlanRules.SetBelow,
        PlasticBelow = top - depth,
    };

    /// <summary>Notes hole and boss of one kind of insert.</summary>
    internal static void Explain(Reasons reasons, string path, InsertProfile insert, PrintBasis basis)
    {
        double chart = insert.HoleDiameter;
        double drawn = Diameter(insert);
        reasons.Length($"{path}.hole-diameter", drawn, insert.Name, drawn < chart
            ? $"the chart's {Reasons.Mm(chart)} would be less than {Reasons.Mm(PlanRules.LeastHoleInterference)} under the body: capped"
            : insert.IsHoleMeasured ? $"{insert.HoleDiameter.Source}: taken as it is"
            : $"the chart for printed parts, {insert.HoleDiameter.Source}; already compensated, so nothing is added");
        double wall = Wall(insert, basis);
        double byLines = basis.Wall(PlanRules.BossWallLines);
        string driver = wall == insert.WallThickness ? $"the insert's chart ({insert.WallThickness.Source})"
            : wall == PlanRules.BossWall ? "the least boss wall"
            : wall == byLines ? $"{PlanRules.BossWallLines} lines of plastic"
            : $"{Reasons.Mm(PlanRules.BossWallShare)} x the body's {Reasons.Mm(insert.OuterDiameter)}";
        reasons.Length($"{path}.boss-wall", wall, insert.Name, $"driven by {driver}");
        reasons.Length($"{path}.boss-diameter", BossDiameter(insert, basis), insert.Name, "hole plus two walls, to 0.1 above");
        reasons.Length($"{path}.lead-in", insert.Tapered ? 0 : PlanRules.LeadIn, Reasons.Rule, insert.Tapered
            ? "a tapered body guides itself" : "45 degrees, so that the insert stands straight before it melts in");
    }
}
