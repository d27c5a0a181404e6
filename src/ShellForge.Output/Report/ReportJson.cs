using System.Collections.Immutable;
using System.Text.Json.Nodes;
using ShellForge.Board.Diagnostics;
using ShellForge.Board.Json;
using ShellForge.Checks.Findings;
using ShellForge.Geometry.Numerics;
using ShellForge.Output.Inspection;
using ShellForge.Output.Leds;

namespace ShellForge.Output.Report;

/// <summary>
/// What the program tells machines about a housing. Lengths are mm, rounded to a micrometre; the same report gives the same bytes.
/// </summary>
public static class ReportJson
{
    /// <summary>What <c>format</c> of the report says.</summary>
    public const string Format = "shellforge-report/1";

    /// <summary>What <c>format</c> of a check says.</summary>
    public const string CheckFormat = "shellforge-check/1";

    /// <summary>What <c>format</c> of what a run of <c>make</c> prints says.</summary>
    public const string MakeFormat = "shellforge-make/1";

    /// <summary>What <c>format</c> of an inspection says.</summary>
    public const string InspectionFormat = "shellforge-inspection/1";

    /// <summary>The whole file.</summary>
    public static byte[] Bytes(HousingReport report) => JsonText.Bytes(ReportDocument.Of(report), ReportContext.Default.ReportDocument);

    /// <summary>The findings only, as <c>check --json</c> prints them.</summary>
    /// <param name="exit">The exit status.</param>
    /// <param name="diagnostics">What is said about the file.</param>
    /// <param name="report">What was found; null where the file can't be used.</param>
    public static byte[] OfCheck(int exit, ImmutableArray<Diagnostic> diagnostics, HousingReport? report) => JsonText.Bytes(
        new CheckDocument(CheckFormat, exit, report?.Verdict, diagnostics,
            report is null ? null : ReportDocument.FindingsOf(report.Findings)),
        ReportContext.Default.CheckDocument);

    /// <summary>What <c>make --json</c> prints.</summary>
    /// <param name="exit">The exit status.</param>
    /// <param name="folder">Where the files stand; null where none was written.</param>
    /// <param name="files">Their names.</param>
    /// <param name="diagnostics">What is said about the board file.</param>
    /// <param name="report">What was made; null where the file can't be used.</param>
    public static byte[] OfMake(int exit, string? folder, IEnumerable<string>? files, ImmutableArray<Diagnostic> diagnostics,
        HousingReport? report) =>
        JsonText.Bytes(
            new MakeDocument(MakeFormat, exit, folder, files?.ToImmutableArray(), diagnostics,
                report is null ? null : ReportDocument.Of(report)),
            ReportContext.Default.MakeDocument);

    /// <summary>What <c>inspect --json</c> prints.</summary>
    /// <param name="exit">The exit status.</param>
    /// <param name="files">The inspected files.</param>
    public static byte[] OfInspection(int exit, IEnumerable<FileInspection> files) => JsonText.Bytes(
        new InspectionDocument(InspectionFormat, exit, [.. files.Select(InspectedFile.Of)]), InspectionContext.Default.InspectionDocument);

    /// <summary>The JSON Schemas of all of these, by the name of the document.</summary>
    public static ImmutableArray<(string Name, Func<string> Schema)> Schemas { get; } =
    [
        ("report", () => DocumentSchema.Json(ReportContext.Default.ReportDocument, Format, Points)),
        ("check", () => DocumentSchema.Json(ReportContext.Default.CheckDocument, CheckFormat, Points)),
        ("make", () => DocumentSchema.Json(ReportContext.Default.MakeDocument, MakeFormat, Points)),
        ("leds", LedDocument.Schema),
        ("inspection", () => DocumentSchema.Json(InspectionContext.Default.InspectionDocument, InspectionFormat, Points)),
    ];

    /// <summary>The word for a verdict.</summary>
    public static string Word(Verdict verdict) => KebabWord.Of(verdict);

    /// <summary>The word for a severity.</summary>
    public static string Word(Severity severity) => KebabWord.Of(severity);

    private static Dictionary<Type, JsonObject> Points { get; } = new()
    {
        [typeof(Point3)] = new JsonObject
        {
            ["type"] = "array",
            ["items"] = new JsonObject { ["type"] = "number" },
            ["minItems"] = 3,
            ["maxItems"] = 3,
        },
    };
}
