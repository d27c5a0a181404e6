using System.Collections.Immutable;
using ShellForge.Board.Yaml.Variation;

namespace ShellForge.Sweep.Variants;

/// <summary>One variant of a sweep, before it is made.</summary>
public sealed record Variant
{
    /// <summary>Its place in the plan's order, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>Which of the order's boards it is made of, from 0.</summary>
    public required int BoardIndex { get; init; }

    /// <summary>The case that it is; null for a combination.</summary>
    public required string? Case { get; init; }

    /// <summary>What tells it from the others: the values of the axes, or of the case.</summary>
    public required ImmutableArray<PlanSetting> Telling { get; init; }

    /// <summary>Everything it sets, in the order in which it is set.</summary>
    public required ImmutableArray<PlanSetting> Settings { get; init; }

    /// <summary>
    /// Six letters and digits that stand for its values: they stay the same when the plan is reordered or grows, and go into parts, file
    /// names and the folder.
    /// </summary>
    public required string Code { get; init; }

    /// <summary>Name of its folder: lower-case letters, digits, points, hyphens, at most 60 of them.</summary>
    public required string Folder { get; init; }
}
