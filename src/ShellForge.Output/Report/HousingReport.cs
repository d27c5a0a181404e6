using System.Collections.Immutable;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.PrintTime;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Output.Plates;
using ShellForge.Planning.Plan;

namespace ShellForge.Output.Report;

/// <summary>What a maker should do with the housing.</summary>
public enum Verdict
{
    /// <summary>Print it.</summary>
    Print,

    /// <summary>Print it, and mind the warnings.</summary>
    MindWarnings,

    /// <summary>Do not print it.</summary>
    DoNotPrint,
}

/// <summary>A written part.</summary>
public sealed record PartReport
{
    /// <summary>Name of the part.</summary>
    public required string Name { get; init; }

    /// <summary>Name of its file; null where none was asked for.</summary>
    public required string? File { get; init; }

    /// <summary>Name of the file with the plate it lies on; null where none was asked for.</summary>
    public required string? Plate { get; init; }

    /// <summary>Name of its filament.</summary>
    public required string Filament { get; init; }

    /// <summary>The part that it is printed together with; null for a job of its own.</summary>
    public required string? PrintedWith { get; init; }

    /// <summary>Count of triangles.</summary>
    public required int Triangles { get; init; }

    /// <summary>Volume, mm3.</summary>
    public required double Volume { get; init; }

    /// <summary>Surface, mm2.</summary>
    public required double Area { get; init; }

    /// <summary>Mass as solid plastic, g.</summary>
    public required double MassGrams { get; init; }

    /// <summary>Extent in print orientation, mm.</summary>
    public required Point3 Size { get; init; }

    /// <summary>Whether the written mesh was proven to bound a solid.</summary>
    public required bool Closed { get; init; }

    /// <summary>Closed surfaces: one for a body without voids.</summary>
    public required int Shells { get; init; }

    /// <summary>Handles: holes that pass through.</summary>
    public required int Genus { get; init; }

    /// <summary>Plastic, filament and time of its print.</summary>
    public required PrintEstimate Estimate { get; init; }

    /// <summary>Time of its print in whole minutes that add up to the housing's.</summary>
    public int Minutes { get; init; }

    /// <summary>Its thinnest place in the assembled frame; null for a part without opposite faces.</summary>
    public required ThicknessReading? Thinnest { get; init; }
}

/// <summary>What <c>make</c> tells about a housing, for machines and for the page.</summary>
public sealed record HousingReport
{
    /// <summary>Name of the housing.</summary>
    public required string Name { get; init; }

    /// <summary>Revision mark; empty for none.</summary>
    public required string Revision { get; init; }

    /// <summary>What to do with it.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>The written parts, from the floor up.</summary>
    public required ImmutableArray<PartReport> Parts { get; init; }

    /// <summary>Findings, worst first.</summary>
    public required ImmutableArray<Finding> Findings { get; init; }

    /// <summary>What to have at hand.</summary>
    public required ImmutableArray<ShoppingItem> Shopping { get; init; }

    /// <summary>Every decision with its reason.</summary>
    public required ImmutableArray<Decision> Resolved { get; init; }

    /// <summary>What light, heat and power are read from.</summary>
    public HousingUnderCheck? Housing { get; init; }

    /// <summary>Extent of the closed housing, mm: width, depth, height; null while no part of it is sound.</summary>
    public Point3? OverallSize
    {
        get
        {
            Box3[] parts =
                [.. (Housing?.SoundParts ?? []).Where(part => !part.PrintMesh.IsEmpty).Select(part => Measure.Bounds(part.AssembledMesh))];
            return parts.Length == 0 ? null : parts.Aggregate((all, next) => all.Including(next.Min).Including(next.Max)).Size;
        }
    }

    /// <summary>How many findings there are of a severity.</summary>
    public int Count(Severity severity) => Findings.Count(finding => finding.Severity == severity);

    /// <summary>Plastic of all parts as printed, g.</summary>
    public double Grams => Parts.Sum(part => part.Estimate.Grams);

    /// <summary>Time of all prints one after the other, minutes.</summary>
    public int Minutes => Parts.Sum(part => part.Minutes);

    /// <summary>Puts a report together.</summary>
    /// <param name="housing">What was made.</param>
    /// <param name="findings">What the rules found.</param>
    /// <param name="parts">What <see cref="PartsOf"/> measured.</param>
    public static HousingReport Of(HousingUnderCheck housing, ImmutableArray<Finding> findings, ImmutableArray<PartReport> parts) => new()
    {
        Name = housing.Board.Name,
        Revision = housing.Board.Revision,
        Verdict = VerdictOf(findings),
        Parts = parts,
        Findings = findings,
        Shopping = housing.Plan.Shopping,
        Resolved = housing.Plan.Decisions,
        Housing = housing,
    };

    /// <summary>What findings say together.</summary>
    public static Verdict VerdictOf(ImmutableArray<Finding> findings) =>
        findings.Any(finding => finding.Severity == Severity.Stop) ? Verdict.DoNotPrint
        : findings.Any(finding => finding.Severity == Severity.Warn) ? Verdict.MindWarnings
        : Verdict.Print;

    /// <summary>The same report, naming no file but those that are written.</summary>
    public HousingReport Naming(IReadOnlySet<string> written) => this with
    {
        Parts =
        [
            .. Parts.Select(part => part with
            {
                File = part.File is not null && written.Contains(part.File) ? part.File : null,
                Plate = part.Plate is not null && written.Contains(part.Plate) ? part.Plate : null,
            }),
        ],
    };

    /// <summary>Name of a part's file: a variant's parts carry its code, so that they stay apart in a slicer's list.</summary>
    public static string FileOf(HousingUnderCheck housing, string part) => $"{housing.Board.NameOf(part)}.stl";

    /// <summary>Measures the parts that are written, side by side; the results stand in their order.</summary>
    public static ImmutableArray<PartReport> PartsOf(HousingUnderCheck housing)
    {
        MadePart[] parts = [.. housing.SoundParts.Where(part => !part.PrintMesh.IsEmpty)];
        ImmutableArray<HousingPlate> plates = HousingPlates.Of(housing);
        var reports = new PartReport[parts.Length];
        Parallel.For(0, parts.Length,
            i => reports[i] = Of(housing, parts[i], plates.First(plate => plate.Parts.Contains(parts[i].Name)).File));
        ImmutableArray<int> minutes = WholeMinutes.Of([.. reports.Select(report => report.Estimate.Minutes)]);
        return [.. reports.Select((report, i) => report with { Minutes = minutes[i] })];
    }

    private static PartReport Of(HousingUnderCheck housing, MadePart part, string plate)
    {
        const double cubicMillimetresInCubicCentimetre = 1000;
        Mesh mesh = part.PrintMesh.Mesh;
        double volume = Measure.Volume(mesh);
        return new PartReport
        {
            Name = part.Name,
            File = FileOf(housing, part.Name),
            Plate = plate,
            Filament = part.Plan.Filament.Name,
            PrintedWith = part.Plan.PrintedWith,
            Triangles = mesh.TriangleCount,
            Volume = volume,
            Area = Measure.Area(mesh),
            MassGrams = volume / cubicMillimetresInCubicCentimetre * part.Plan.Filament.Density,
            Size = Measure.Bounds(mesh).Size,
            Closed = part.IsSound,
            Shells = Measure.Shells(mesh),
            Genus = Measure.Genus(mesh),
            Estimate = PrintEstimate.Printed(housing, part),
            Thinnest = ThinnestPlace.Of(housing, part) is { } thinnest
                ? thinnest with { At = part.ToAssembled(thinnest.At), Opposite = part.ToAssembled(thinnest.Opposite) }
                : null,
        };
    }
}
