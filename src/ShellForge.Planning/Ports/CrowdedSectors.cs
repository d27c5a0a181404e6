using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Ports;

/// <summary>
/// Tells where a port shares its stretch of wall with other features: each weakens the wall or is in the way of a hand, and a revision that
/// turns one of them by a few degrees is free.
/// </summary>
internal static class CrowdedSectors
{
    /// <summary>Stretch of rim looked at, half to either side of the port, mm.</summary>
    private const double Sector = 15;

    /// <summary>Notes each port that is not alone.</summary>
    public static void Note(HousingDraft draft, CoverSide cover, Reasons reasons)
    {
        double rim = draft.Shell.Footprint.Filled().Loops.SelectMany(l => l).Max(p => p.Length);
        foreach (PortPlan port in draft.Ports)
        {
            bool Near(Point2 at) => Angle.Between(Angle.Of(at), Angle.Of(port.Face)).Radians * rim <= Sector / 2
                && Point2.Dot(at, port.Face) > 0;
            ImmutableArray<string> others =
            [
                .. draft.Bosses.Where(b => Near(b.At)).Select(b => b.Name),
                .. (cover.Mount?.AtRim ?? []).Where(each => Near(each.At)).Select(each => each.What),
                .. cover.PryNotches.Where(n => Near(Point2.Polar(rim, n.At))).Select(_ => "pry notch"),
                .. Near(Point2.Polar(rim, cover.Key.At)) ? ["key"] : ImmutableArray<string>.Empty,
            ];
            if (!others.IsEmpty)
            {
                reasons.Choice($"ports.{port.Ref}.sector", string.Join(", ", others), Reasons.Rule,
                    $"within {Reasons.Mm(Sector)} of rim at {port.Ref}: turn one of them if the wall cracks or a plug is hard to reach");
            }
        }
    }
}
