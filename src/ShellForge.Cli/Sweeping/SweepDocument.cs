using System.Collections.Immutable;
using System.ComponentModel;
using System.Text.Json.Serialization;
using ShellForge.Board.Diagnostics;
using ShellForge.Board.Json;

namespace ShellForge.Cli.Sweeping;

/// <summary>What <c>sweep --json</c> prints.</summary>
internal sealed record SweepDocument
{
    /// <summary>What <c>format</c> says.</summary>
    public const string FormatName = "shellforge-sweep/1";

    public string Format { get; } = FormatName;

    [Description("The exit status: 0 when every variant has a housing, 1 when one has none, 2 when the plan can't be used.")]
    public required int Exit { get; init; }

    [Description("Folder of the sweep; null where nothing is written.")]
    public string? Folder { get; init; }

    [Description("Variants of the plan.")]
    public int? Variants { get; init; }

    [Description("Variants of this share.")]
    public int? OfThisShare { get; init; }

    [Description("Variants that this run made; in a dry run, that a run would make.")]
    public int? Made { get; init; }

    [Description("Variants of this share that were finished before.")]
    public int? Kept { get; init; }

    [Description("Variants with a finding of severity stop.")]
    public int? WithAStop { get; init; }

    [Description("Variants for which there is no housing.")]
    public int? WithoutHousing { get; init; }

    [Description("Variants of the plan that no run has finished yet.")]
    public int? Missing { get; init; }

    [Description("In a dry run, seconds that it would take on this machine.")]
    public double? Seconds { get; init; }

    [Description("In a dry run, bytes that it would write.")]
    public double? Bytes { get; init; }

    [Description("What is said about plan, boards and profiles.")]
    public required ImmutableArray<Diagnostic> Diagnostics { get; init; }

    public byte[] Written() => JsonText.Bytes(this, SweepContext.Default.SweepDocument);

    public static string Schema() => DocumentSchema.Json(SweepContext.Default.SweepDocument, FormatName);
}

/// <summary>How it is written.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower,
    GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(SweepDocument))]
internal sealed partial class SweepContext : JsonSerializerContext;
