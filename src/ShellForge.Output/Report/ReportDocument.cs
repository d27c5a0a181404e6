using System.Collections.Immutable;
using System.ComponentModel;
using System.Text.Json.Serialization;
using ShellForge.Board.Diagnostics;
using ShellForge.Board.Json;
using ShellForge.Checks.Findings;
using ShellForge.Checks.PrintTime;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;

namespace ShellForge.Output.Report;

/// <summary>The report as it is written. Members stand in the order of the file.</summary>
internal sealed record ReportDocument
{
    public required string Format { get; init; }

    [Description("Name of the housing.")]
    public required string Name { get; init; }

    [Description("Revision mark.")]
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Revision { get; init; }

    [Description("What to do with the housing.")]
    [JsonConverter(typeof(KebabWords<Verdict>))]
    public required Verdict Verdict { get; init; }

    [Description("The written parts, from the floor up.")]
    public required ImmutableArray<PartDocument> Parts { get; init; }

    [Description("Plastic and time of all prints together.")]
    public required PrintDocument Print { get; init; }

    [Description("What the maker's slicer says of its G-code, beside what is planned; left out where none was given.")]
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public ImmutableArray<SlicedDocument>? Sliced { get; init; }

    [Description("Findings, worst first.")]
    public required ImmutableArray<FindingDocument> Findings { get; init; }

    [Description("What to have at hand.")]
    public required ImmutableArray<ShoppingItem> Shopping { get; init; }

    [Description("Light, heat and power.")]
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public PhysicsDocument? Physics { get; init; }

    [Description("Every dimension and choice of the plan by its dotted path.")]
    public required SortedDictionary<string, ResolvedDocument> Resolved { get; init; }

    public static ReportDocument Of(HousingReport report) => new()
    {
        Format = ReportJson.Format,
        Name = report.Name,
        Revision = report.Revision.Length > 0 ? report.Revision : null,
        Verdict = report.Verdict,
        Parts = [.. report.Parts.Select(PartDocument.Of)],
        Print = PrintDocument.Of(
            [.. report.Parts.Select(part => part.Estimate)], report.Minutes,
            report.Housing is { } made ? PrintEstimate.AssumptionsOf(made.Board.Print.Printer) : ""),
        Sliced = report.Housing is { } given ? SlicedDocument.AllOf(given) : null,
        Findings = FindingsOf(report.Findings),
        Shopping = report.Shopping,
        Physics = report.Housing is { } housing ? PhysicsDocument.Of(housing) : null,
        Resolved = new SortedDictionary<string, ResolvedDocument>(
            report.Resolved.ToDictionary(decision => decision.Path,
                decision => new ResolvedDocument(decision.Value, decision.From, decision.Why), StringComparer.Ordinal),
            StringComparer.Ordinal),
    };

    public static ImmutableArray<FindingDocument> FindingsOf(IEnumerable<Finding> findings) => [.. findings.Select(FindingDocument.Of)];
}

/// <summary>What <c>check --json</c> prints.</summary>
internal sealed record CheckDocument(
    string Format,
    [property: Description("The exit status.")] int Exit,
    [property: JsonConverter(typeof(KebabWords<Verdict>)), JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    [property: Description("What to do with the housing; left out where the file can't be used.")]
    Verdict? Verdict,
    [property: Description("What is said about the input.")] ImmutableArray<Diagnostic> Diagnostics,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    [property: Description("Findings, worst first; left out where the file can't be used.")]
    ImmutableArray<FindingDocument>? Findings);

/// <summary>What <c>make --json</c> prints.</summary>
internal sealed record MakeDocument(
    string Format,
    [property: Description("The exit status.")] int Exit,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    [property: Description("Folder of the written files; left out where none was written.")]
    string? Folder,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    [property: Description("Names of the written files.")]
    ImmutableArray<string>? Files,
    [property: Description("What is said about the input.")] ImmutableArray<Diagnostic> Diagnostics,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    [property: Description("The report, as it is written to report.json.")]
    ReportDocument? Report);

/// <summary>A written part.</summary>
internal sealed record PartDocument(
    [property: Description("Name of the part.")] string Name,
    [property: Description("Name of its file; null where none was asked for.")] string? File,
    [property: Description("Name of the file with the plate it lies on; null where none was asked for.")] string? Plate,
    [property: Description("Name of its filament.")] string Filament,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    [property: Description("The part that it is printed together with.")]
    string? PrintedWith,
    int Triangles,
    double VolumeMm3,
    [property: Description("Surface.")] double AreaMm2,
    [property: JsonConverter(typeof(Hundredths)), Description("Mass as solid plastic.")] double MassG,
    [property: Description("Extent in print orientation.")] Point3 SizeMm,
    [property: Description("Whether the written mesh was proven to bound a solid.")] bool Closed,
    [property: Description("Closed surfaces.")] int Shells,
    [property: Description("Holes that pass through.")] int Genus,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    [property: Description("Its thinnest place; left out for a part without opposite faces.")]
    double? ThinnestMm,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    [property: Description("Where that is, as assembled, mm.")]
    Point3? ThinnestAt,
    [property: Description("Plastic and time of its print.")] PrintDocument Print)
{
    public static PartDocument Of(PartReport part) => new(
        part.Name, part.File, part.Plate, part.Filament, part.PrintedWith, part.Triangles, part.Volume, part.Area, part.MassGrams,
        part.Size,
        part.Closed, part.Shells, part.Genus, part.Thinnest?.Thickness, part.Thinnest?.At,
        PrintDocument.Of([part.Estimate], part.Minutes, null));
}

/// <summary>Estimates of prints.</summary>
internal sealed record PrintDocument(
    [property: JsonConverter(typeof(Tenths))] double PlasticG,
    [property: JsonConverter(typeof(Hundredths))] double FilamentM,
    int Minutes,
    [property: JsonConverter(typeof(Tenths)), Description("Heating, homing and changes of filament, within the "
        + "minutes.")] double WaitingMinutes,
    int FilamentChanges,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    [property: Description("What the estimates assume of the slicer.")]
    string? Assumptions)
{
    public static PrintDocument Of(IReadOnlyList<PrintEstimate> prints, int minutes, string? assumptions) => new(
        prints.Sum(print => print.Grams),
        prints.Sum(print => print.FilamentMetres),
        minutes,
        prints.Sum(print => print.WaitingMinutes),
        prints.Sum(print => print.Changes),
        assumptions);
}

/// <summary>A finding.</summary>
internal sealed record FindingDocument(
    [property: Description("Name of the rule.")] string Rule,
    [property: JsonConverter(typeof(KebabWords<Severity>))] Severity Severity,
    [property: Description("What it is about: a printed part, a designator, a screw, a hole.")] string Subject,
    [property: Description("What is the matter.")] string Message,
    [property: Description("The value found; null where there is none to measure.")] double? Measured,
    [property: Description("The value it is held against; null where there is none.")] double? Limit,
    [property: Description("Unit of both; empty for a bare number.")] string Unit,
    [property: Description("Place in the assembled frame, mm; null where it has none.")] Point3? At,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    [property: Description("Place in the board file, or in the maker's G-code.")]
    FilePlaceDocument? InFile,
    [property: Description("What the maker can do.")] string Remedy,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    [property: Description("Why the maker accepts it.")]
    string? Accepted)
{
    public static FindingDocument Of(Finding finding) => new(
        finding.Rule, finding.Severity, finding.Subject, finding.Message, Finite(finding.Measured), Finite(finding.Limit), finding.Unit,
        finding.At, finding.InFile is { } place ? new FilePlaceDocument(place.File, place.Line, place.Column) : null, finding.Remedy,
        finding.Accepted);

    // A rule that divides by nothing found nothing.
    private static double? Finite(double? value) => value is { } number && double.IsFinite(number) ? number : null;
}

/// <summary>A place in a file.</summary>
internal sealed record FilePlaceDocument(string File, int Line, int Column);

/// <summary>A decision of the plan.</summary>
internal sealed record ResolvedDocument(
    [property: Description("The value as text, lengths in mm.")] string Value,
    [property: Description("A place in the board file, a profile, or the rule of the plan.")] string From,
    [property: Description("What drove it.")] string Why);
