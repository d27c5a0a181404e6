using System.Collections.Immutable;
using ShellForge.Checks.Fit;
using ShellForge.Checks.Print;
using ShellForge.Checks.Truth;

namespace ShellForge.Checks;

/// <summary>All rules, one line each, in the order in which findings of equal severity are told.</summary>
public static class RuleList
{
    /// <summary>All rules.</summary>
    public static ImmutableArray<IRule> All { get; } =
    [
        new AuditFailed(),
        new PlanRefused(),
        new UnknownHeight(),
        new PartsOverlap(),
        new HeadAgainstPart(),
        new PartAgainstHousing(),
        new NoWayIn(),
        new InsertWallTooThin(),
        new InsertHoleTooWide(),
        new ScrewEngagement(),
        new ScrewBottomsOut(),
        new ScrewsMayNotStart(),
        new SnapOverstrained(),
        new PlugDoesNotSeat(),
        new WallOffTheLines(),
        new OffTheBed(),
        new FeatureVanishes(),
        new WallBetweenLines(),
        new GapCloses(),
        new NothingBelow(),
        new PoorFooting(),
    ];
}
