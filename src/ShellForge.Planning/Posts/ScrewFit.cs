using ShellForge.Board.Profiles;
using ShellForge.Planning.Draft;

namespace ShellForge.Planning.Posts;

/// <summary>A stock length against a clamped stack and an insert: long enough to hold, short enough not to bottom out.</summary>
/// <param name="Length">Stock length, mm.</param>
/// <param name="Engagement">Thread in the insert, mm.</param>
/// <param name="Wanted">Engagement wanted, mm.</param>
/// <param name="Depth">Hole depth needed from the boss's top, whole layers, mm.</param>
/// <param name="TipGap">From tip to the bottom of that hole, mm.</param>
/// <param name="Deepened">Whether the screw's tip, not the insert, drives the depth.</param>
internal sealed record ScrewFit(
    double Length, double Engagement, double Wanted, double Depth, double TipGap, bool Deepened)
{
    /// <summary>Engagement wanted: the thread's default, but no more than the insert offers, mm.</summary>
    public static double EngagementWanted(ScrewProfile screw, InsertProfile insert) =>
        Math.Min(screw.EngagementDefault, insert.Length - PlanRules.InsertRunOut);

    /// <summary>
    /// The shortest stock length that engages as wanted over this clamp. When it reaches deeper than the insert's own hole, the hole is
    /// deepened for it. When no length is long enough, the longest there is, with the engagement that is left.
    /// </summary>
    public static ScrewFit Choose(ScrewProfile screw, InsertProfile insert, double clamp, PrintBasis basis)
    {
        double wanted = EngagementWanted(screw, insert);
        double least = clamp + PlanRules.SetBelow + wanted;
        double length = screw.StockLengths.Where(l => l >= least - Layers.Slack).DefaultIfEmpty(screw.StockLengths[^1]).First();
        return For(screw, insert, clamp, length, basis);
    }

    /// <summary>What a given length does.</summary>
    public static ScrewFit For(ScrewProfile screw, InsertProfile insert, double clamp, double length, PrintBasis basis)
    {
        double reach = length - clamp;
        double own = InsertHoleDecision.Depth(insert, basis);
        double forTip = basis.UpDistance(reach + PlanRules.TipGap);
        double depth = Math.Max(own, forTip);
        double engagement = Math.Clamp(reach - PlanRules.SetBelow, 0, insert.Length);
        return new ScrewFit(length, engagement, EngagementWanted(screw, insert), depth, depth - reach, forTip > own);
    }
}
