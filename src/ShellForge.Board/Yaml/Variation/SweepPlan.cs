using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Diagnostics;

namespace ShellForge.Board.Yaml.Variation;

/// <summary>How variants are told apart on the parts themselves.</summary>
public enum VariantMark
{
    /// <summary>The variant's code stands inside every part with room for it, behind the revision.</summary>
    Inside,

    /// <summary>Only names of parts and files tell the variant; parts that several variants share stay equal.</summary>
    Names,
}

/// <summary>A plan: which variants of which boards are made.</summary>
public sealed record SweepPlan
{
    /// <summary>Stands for the board file in exclusions, cases and derived texts.</summary>
    public const string BoardWord = "board";

    /// <summary>Stands for the name of the case in derived texts.</summary>
    public const string CaseWord = "case";

    /// <summary>The name of the plan's file, as the user gave it.</summary>
    public required string File { get; init; }

    /// <summary>Board files as written, relative to the plan; at least one.</summary>
    public required ImmutableArray<PlanValue> Boards { get; init; }

    /// <summary>What every variant sets.</summary>
    public required ImmutableArray<PlanSetting> Fixed { get; init; }

    /// <summary>What is varied; every step of one meets every step of the others.</summary>
    public required ImmutableArray<PlanAxis> Axes { get; init; }

    /// <summary>Combinations left out: all settings of an entry met.</summary>
    public required ImmutableArray<ImmutableArray<PlanSetting>> Except { get; init; }

    /// <summary>Variants with a name of their own, beside the combinations.</summary>
    public required ImmutableArray<PlanCase> Cases { get; init; }

    /// <summary>Values made of others: a text with <c>{path}</c> or <c>{board}</c> in it.</summary>
    public required ImmutableArray<PlanSetting> Derived { get; init; }

    /// <summary>How parts tell their variant.</summary>
    public required VariantMark Mark { get; init; }

    /// <summary>Price of a kilogram of filament by profile name, in the user's money.</summary>
    public required ImmutableArray<(string Filament, double PerKilogram)> Prices { get; init; }

    /// <summary>Which variant is wished for; null for none.</summary>
    public BestWish? Best { get; init; }

    /// <summary>How many more small parts are bought than used, percent.</summary>
    public required double SparesPercent { get; init; }
}

/// <summary>A variant with a name of its own.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Place">Where the plan names it.</param>
/// <param name="Settings">What it sets.</param>
public sealed record PlanCase(string Name, FilePlace Place, ImmutableArray<PlanSetting> Settings);

/// <summary>What came of reading a plan.</summary>
/// <param name="Plan">The plan; null when there was an error.</param>
/// <param name="Diagnostics">Everything there is to say about it, in the order of its places.</param>
public sealed record SweepPlanResult(SweepPlan? Plan, ImmutableArray<Diagnostic> Diagnostics);
