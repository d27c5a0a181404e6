using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Openings;

/// <summary>
/// Tells where an opening in the wall shares its stretch of wall with other features: each weakens the wall or is in the way of a hand,
/// and a revision that turns one of them by a few degrees is free. The rule on crowded sectors tells what is found here.
/// </summary>
internal static class CrowdedSectors
{
    /// <summary>Stretch of rim looked at, half to either side of the opening, mm.</summary>
    private const double Sector = 15;

    /// <summary>Each opening that is not alone.</summary>
    public static Decided<ImmutableArray<CrowdedOpening>> Of(HousingDraft draft, CoverSide cover)
    {
        var reasons = new Reasons();
        double rim = draft.Shell.Footprint.Filled().Loops.SelectMany(l => l).Max(p => p.Length);
        (string What, Point2 At)[] all =
        [
            .. draft.Bosses.Where(boss => boss.Hole is not null).Select(boss => (boss.Name, boss.At)),
            .. draft.CableExits.SelectMany(exit => exit.NearRim),
            .. cover.Mount?.AtRim ?? [],
            .. cover.PryNotches.Select(notch => ("a pry notch", Point2.Polar(rim, notch.At))),
            ("the key", Point2.Polar(rim, cover.Key.At)),
        ];
        var crowded = ImmutableArray.CreateBuilder<CrowdedOpening>();
        foreach (OpeningPlan opening in draft.Openings)
        {
            if (opening.InWall is not { } wall)
            {
                continue;
            }

            ImmutableArray<(string What, double Along)> near =
            [
                .. all.Where(each => Point2.Dot(each.At, wall.Through) > 0)
                    .Select(each => (each.What, Along: Angle.Between(Angle.Of(each.At), Angle.Of(wall.Through)).Radians * rim))
                    .Where(each => each.Along <= Sector / 2)
                    .OrderBy(each => each.Along),
            ];
            if (near.IsEmpty)
            {
                continue;
            }

            crowded.Add(new CrowdedOpening(opening.Ref, wall, Sector / 2, near));
            reasons.Choice($"ports.{opening.Ref}.sector", string.Join(", ", near.Select(each => each.What)), Reasons.Rule,
                $"within {Reasons.Mm(Sector)} of rim at {opening.Ref}: turn one of them if the wall cracks or a plug is hard to reach");
        }

        return reasons.Of(crowded.ToImmutable());
    }
}
