using System.Collections.Immutable;
using ShellForge.Geometry.Solids;
using ShellForge.Housing.Features;
using ShellForge.Housing.Features.Exits;
using ShellForge.Housing.Features.Openings;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing;

/// <summary>Makes the parts of a plan. Decides nothing: every length comes from the plan.</summary>
public static class HousingBuilder
{
    /// <summary>Every feature, in the order in which their faces are named.</summary>
    private static readonly ImmutableArray<Func<HousingPlan, IEnumerable<FeatureContribution>>> Features =
    [
        TubShell.Of,
        Bosses.Of,
        OpeningBodies.Of,
        CableExits.Of,
        Saddles.Of,
        BatteryBay.Of,
        SecondBoardSeats.Of,
        CoverSideFeatures.Of,
    ];

    /// <summary>The parts, in the order of the plan, as solids that nobody has evaluated yet.</summary>
    public static ImmutableArray<HousingPart> Build(HousingPlan plan)
    {
        ImmutableArray<FeatureContribution> contributions = [.. Features.SelectMany(feature => feature(plan))];
        return [.. plan.Parts.Select(part => Join(part, [.. contributions.Where(c => c.Part == part.Name)]))];
    }

    private static HousingPart Join(PartPlan part, ImmutableArray<FeatureContribution> contributions)
    {
        Solid assembled = Joined(contributions);
        return new HousingPart
        {
            Name = part.Name,
            Assembled = assembled,
            InPrint = assembled.Moved(part.ToFile),
            Unmarked = contributions.Any(c => c.IsMark) ? Joined(contributions.Where(c => !c.IsMark)).Moved(part.ToFile) : null,
            Plan = part,
        };
    }

    private static Solid Joined(IEnumerable<FeatureContribution> contributions)
    {
        FeatureContribution[] all = [.. contributions];
        Solid body = Solid.Union(all.Where(c => c.Add is not null).Select(c => c.Add!));
        ImmutableArray<Solid> cuts = [.. all.Where(c => c.Cut is not null).Select(c => c.Cut!)];
        return cuts.IsEmpty ? body : body.Less(cuts);
    }
}
