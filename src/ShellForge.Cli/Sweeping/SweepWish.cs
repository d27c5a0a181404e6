using System.Collections.Immutable;
using ShellForge.Output.Files;
using ShellForge.Sweep.Variants;

namespace ShellForge.Cli.Sweeping;

/// <summary>What was asked of <c>sweep</c>.</summary>
internal sealed record SweepWish
{
    /// <summary>Variants at one time: no machine has more cores.</summary>
    public const int MostJobs = 1024;

    /// <summary>Shares of one sweep: more than any engine's array takes.</summary>
    public const int MostShares = 1_000_000;

    /// <summary>The plan's file.</summary>
    public required string Plan { get; init; }

    /// <summary>Folder to write into; null for the usual one.</summary>
    public required string? Folder { get; init; }

    /// <summary>Values that win over the plan.</summary>
    public required string[] Set { get; init; }

    /// <summary>Files wanted of each variant.</summary>
    public required ImmutableArray<OutputFormat> Formats { get; init; }

    /// <summary>Whether no files of variants are written.</summary>
    public required bool FindingsOnly { get; init; }

    /// <summary>Variants at one time.</summary>
    public required int Jobs { get; init; }

    /// <summary>Which share; null for what the engine says, or all.</summary>
    public required Shard? Shard { get; init; }

    /// <summary>Folder whose shares are joined; null to make variants.</summary>
    public required string? Merge { get; init; }

    /// <summary>Engine whose script is printed; null to make variants.</summary>
    public required string? Script { get; init; }

    /// <summary>Shares of that script.</summary>
    public required int Shares { get; init; }

    /// <summary>Whether plates of the batch are written as 3MF files.</summary>
    public required bool Plates { get; init; }

    /// <summary>Whether only to estimate.</summary>
    public required bool DryRun { get; init; }

    /// <summary>Whether to print JSON.</summary>
    public required bool Json { get; init; }

    /// <summary>Whether to print nothing but errors.</summary>
    public required bool Quiet { get; init; }
}
