using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Posts;

/// <summary>
/// A closure screw's stock length and the height of its seat. The seat may lie anywhere in the cover's post, so the length comes
/// from stock and the counterbore is made as deep as that length asks.
/// </summary>
/// <param name="Length">Stock length, mm.</param>
/// <param name="SeatZ">z of the face under the head.</param>
internal sealed record ClosureScrewFit(double Length, double SeatZ)
{
    /// <summary>Depth of a closure boss's hole, mm: the insert's own, or what the floor leaves.</summary>
    public static double Depth(Given given, double bossTop)
    {
        (BoardFile file, PrintBasis basis) = given;
        double own = InsertHoleDecision.Depth(file.Housing.Insert!, basis);
        return own <= bossTop - PlanRules.PlasticBelow ? own : basis.Down(bossTop - PlanRules.PlasticBelow);
    }

    /// <summary>
    /// The longest stock length whose seat fits between the least plastic under the head and the sunk head: the longest gives the
    /// shallowest counterbore.
    /// </summary>
    /// <param name="screw">The screw.</param>
    /// <param name="boss">The boss that it goes into.</param>
    /// <param name="lowestSeat">Lowest z of the seat.</param>
    /// <param name="front">z of the cover's outer face.</param>
    /// <param name="basis">Layers; the counterbore's depth is whole ones.</param>
    public static ClosureScrewFit Choose(
        ScrewProfile screw, BossPlan boss, double lowestSeat, double front, PrintBasis basis)
    {
        (double bossTop, double depth) = (boss.Top, boss.Hole!.Depth);
        double highest = Math.Max(lowestSeat, front - screw.HeadHeight - PlanRules.CounterboreDeeper);
        double wanted = ScrewFit.EngagementWanted(screw, boss.Hole.Insert);
        foreach (double length in screw.StockLengths.Reverse())
        {
            double seat = Math.Min(highest, bossTop + length - PlanRules.SetBelow - wanted);
            seat = Layered(seat, front, basis);
            if (seat >= lowestSeat - Layers.Slack && bossTop + length - seat <= depth - PlanRules.TipGap + Layers.Slack)
            {
                return new ClosureScrewFit(length, seat);
            }
        }

        // Nothing fits between: the length that engages best from the highest seat without bottoming out, or the shortest there is.
        double top = Layered(highest, front, basis);
        double best = screw.StockLengths.LastOrDefault(l => l - (top - bossTop) <= depth - PlanRules.TipGap, screw.StockLengths[0]);
        return new ClosureScrewFit(best, top);
    }

    private static double Layered(double seat, double front, PrintBasis basis) =>
        Math.Round(front - basis.UpDistance(front - seat), 6);
}
