using System.Collections.Immutable;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning;

/// <summary>Screws, inserts, washers, ties and sheet to have at hand, counted from the plan.</summary>
internal static class ShoppingDecision
{
    /// <summary>The list, in the order of assembly.</summary>
    public static ImmutableArray<ShoppingItem> Decide(HousingDraft draft, CoverSide cover)
    {
        (ImmutableArray<BossPlan> bosses, ImmutableArray<ScrewJointPlan> screws) = (draft.Bosses, draft.Screws);
        DiffuserPlan diffuser = cover.Diffuser;
        var items = ImmutableArray.CreateBuilder<ShoppingItem>();
        items.AddRange(Count(bosses.Where(b => b.Hole is not null).Select(b =>
            $"heat-set insert {b.Hole!.Insert.Thread} x {Reasons.Mm(b.Hole.Insert.Length)}, body "
                + $"{Reasons.Mm(b.Hole.Insert.OuterDiameter)} ({b.Hole.Insert.Name})")));
        items.AddRange(Count(screws.Select(s => $"screw {s.Screw.Thread} x {Reasons.Mm(s.Length)} ({s.Screw.Name})")));
        items.AddRange(Count(screws.Where(s => s.Washer).Select(s =>
            $"washer {s.Screw.Thread}, outside {Reasons.Mm(s.Screw.WasherDiameter)}")));
        items.AddRange(draft.CableExits.SelectMany(exit => exit.Shopping).GroupBy(item => item.Item)
            .Select(alike => new ShoppingItem(alike.Key, alike.Sum(item => item.Count))));
        if (diffuser.Fit == DiffuserFit.CutSheet)
        {
            var bounds = diffuser.Outline.Bounds;
            items.Add(new ShoppingItem(
                $"diffuser sheet {Reasons.Mm(diffuser.Thickness)} thick, cut from {Reasons.Mm(Math.Ceiling(bounds.Max.X - bounds.Min.X))} "
                    + $"x {Reasons.Mm(Math.Ceiling(bounds.Max.Y - bounds.Min.Y))}", 1));
        }

        items.AddRange(cover.Closure.Shopping);
        items.AddRange(cover.Mount?.Shopping ?? []);
        items.AddRange(BatteryHands.Shopping(draft.Bay));
        items.AddRange(SecondBoardHands.Shopping(draft.SecondBoard, draft.Spacers));
        return items.ToImmutable();
    }

    private static IEnumerable<ShoppingItem> Count(IEnumerable<string> items) =>
        items.GroupBy(i => i).Select(g => new ShoppingItem(g.Key, g.Count()));
}
