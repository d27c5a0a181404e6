using System.Runtime.InteropServices;
using System.Security.Cryptography;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Variation;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Output.Report;
using ShellForge.Pipeline;
using ShellForge.Planning.Plan;

namespace ShellForge.Sweep.Rows;

/// <summary>Takes the figures of a housing that an index shows. Rounded, so that the same housing gives the same text everywhere.</summary>
internal static class HousingFigured
{
    private const double GramsPerKilogram = 1000;

    public static HousingFigures Of(MadeHousing made, IReadOnlyList<(string Filament, double PerKilogram)> prices)
    {
        (HousingUnderCheck housing, HousingReport report) = (made.Housing, made.Report);
        PrinterProfile printer = housing.Board.Print.Printer;
        return new HousingFigures
        {
            Name = report.Name,
            Verdict = ReportJson.Word(report.Verdict),
            Size = SizeOf(housing),
            Grams = Math.Round(report.Parts.Sum(part => part.Estimate.Grams), 1),
            Minutes = Math.Round(report.Parts.Sum(part => part.Estimate.Minutes)),
            Cost = CostOf(report, prices),
            Stops = report.Findings.Count(finding => finding.Severity == Severity.Stop),
            Warnings = report.Findings.Count(finding => finding.Severity == Severity.Warn),
            Clearance = housing.SoundParts.SelectMany(part => housing.GapsOf(part)).Select(gap => (double?)Rounded(gap.Distance)).Min(),
            Evenness = housing.Light?.MinimumOverMean is { } even ? Rounded(even) : null,
            WarmestPlastic = Tenth(housing.Heat.Planned.WarmestPlastic.Celsius),
            HeatMargin = Tenth(housing.Heat.PlasticLimitCelsius - housing.Heat.Planned.WarmestPlastic.Celsius),
            Screws = report.Shopping.Where(item => item.Item.StartsWith("screw ", StringComparison.Ordinal)).Sum(item => item.Count),
            Printer = printer.Name,
            Bed = [Rounded(printer.BedX - (2 * printer.BedMargin)), Rounded(printer.BedY - (2 * printer.BedMargin))],
            Parts = [.. report.Parts.Select(part => new PartFigures
            {
                Name = part.Name,
                Filament = part.Filament,
                PrintedWith = part.PrintedWith,
                Grams = Math.Round(part.Estimate.Grams, 1),
                Size = [Rounded(part.Size.X), Rounded(part.Size.Y), Rounded(part.Size.Z)],
                Shape = ShapeOf(housing.Part(part.Name)!.PrintMesh.Mesh),
            })],
            Findings = [.. report.Findings.Select(finding => new FindingFigures
            {
                Rule = finding.Rule, Severity = ReportJson.Word(finding.Severity), Subject = finding.Subject, Message = finding.Message,
            })],
            Shopping = [.. report.Shopping.Select(item => new NamedCount(item.Item, item.Count))],
            Resolved =
                [.. report.Resolved.OrderBy(decision => decision.Path, StringComparer.Ordinal)
                    .Select(decision => new NamedText(decision.Path, decision.Value))],
        };
    }

    /// <summary>The values that tell a variant, for its row.</summary>
    public static IReadOnlyList<NamedText> ValuesOf(IEnumerable<PlanSetting> telling) =>
        [.. telling.Select(setting => new NamedText(setting.Path, setting.Value.Raw))];

    // Extent of the parts as they sit in the housing.
    private static double[] SizeOf(HousingUnderCheck housing)
    {
        Box3 box = Box3.Empty;
        foreach (MadePart part in housing.SoundParts.Where(part => !part.PrintMesh.IsEmpty))
        {
            Box3 one = Measure.Bounds(part.AssembledMesh);
            box = box.Including(one.Min).Including(one.Max);
        }

        return box.IsEmpty ? [0, 0, 0] : [Rounded(box.Size.X), Rounded(box.Size.Y), Rounded(box.Size.Z)];
    }

    private static double? CostOf(HousingReport report, IReadOnlyList<(string Filament, double PerKilogram)> prices)
    {
        double sum = 0;
        foreach (PartReport part in report.Parts)
        {
            double[] price = [.. prices.Where(entry => entry.Filament == part.Filament).Select(entry => entry.PerKilogram)];
            if (price.Length == 0)
            {
                return null;
            }

            sum += part.Estimate.Grams / GramsPerKilogram * price[0];
        }

        return Math.Round(sum, 2);
    }

    private static string ShapeOf(Mesh mesh)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData(MemoryMarshal.AsBytes(mesh.Vertices.AsSpan()));
        hash.AppendData(MemoryMarshal.AsBytes(mesh.Triangles.AsSpan()));
        const int shown = 16;
        return Convert.ToHexStringLower(hash.GetHashAndReset())[..shown];
    }

    private static double Tenth(double value) => Math.Round(value, 1) + 0;

    // Adding zero makes a negative zero positive.
    private static double Rounded(double value) => Math.Round(value, 3) + 0;
}
