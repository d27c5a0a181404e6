using System.Collections.Immutable;
using System.ComponentModel;
using System.Text.Json.Serialization;
using ShellForge.Board.Diagnostics;
using ShellForge.Board.Json;
using ShellForge.Sweep.Comparing;

namespace ShellForge.Cli.Comparing;

/// <summary>What <c>compare --json</c> prints.</summary>
internal sealed record ComparisonDocument
{
    /// <summary>What <c>format</c> says.</summary>
    public const string FormatName = "shellforge-comparison/1";

    public string Format { get; } = FormatName;

    [Description("The exit status.")]
    public required int Exit { get; init; }

    [Description("Name, verdict and figures of the whole.")]
    public ImmutableArray<Change> Whole { get; init; } = [];

    [Description("Values that rest on a place in the file or on the command line.")]
    public ImmutableArray<Change> Said { get; init; } = [];

    [Description("Values that are worked out otherwise.")]
    public ImmutableArray<Change> Follows { get; init; } = [];

    [Description("Findings that came, went, or say something else.")]
    public ImmutableArray<Change> Findings { get; init; } = [];

    [Description("Parts whose bytes or sizes differ.")]
    public ImmutableArray<Change> Parts { get; init; } = [];

    [Description("What is bought otherwise.")]
    public ImmutableArray<Change> Shopping { get; init; } = [];

    [Description("What is said about board files that can't be used.")]
    public ImmutableArray<Diagnostic> Diagnostics { get; init; } = [];

    public static ComparisonDocument Of(HousingComparison comparison) => new()
    {
        Exit = (int)ExitCode.Done,
        Whole = comparison.Whole,
        Said = comparison.Said,
        Follows = comparison.Follows,
        Findings = comparison.Findings,
        Parts = comparison.Parts,
        Shopping = comparison.Shopping,
    };

    public byte[] Written() => JsonText.Bytes(this, ComparisonContext.Default.ComparisonDocument);

    public static string Schema() => DocumentSchema.Json(ComparisonContext.Default.ComparisonDocument, FormatName);
}

/// <summary>How it is written.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower,
    GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(ComparisonDocument))]
internal sealed partial class ComparisonContext : JsonSerializerContext;
