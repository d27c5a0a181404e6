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
            Size = report.OverallSize is { } size ? Rounded(size) : [0, 0, 0],
            Grams = Math.Round(report.Grams, 1),
            Minutes = report.Minutes,
            Cost = CostOf(report, prices),
            Stops = report.Count(Severity.Stop),
            Warnings = report.Count(Severity.Warn),
            Clearance = housing.SoundParts.SelectMany(part => housing.GapsOf(part)).Select(gap => (double?)Rounded(gap.Distance)).Min(),
            Evenness = housing.Light?.MinimumOverMean is { } even ? Rounded(even) : null,
            WarmestPlastic = Tenth(housing.Heat.Planned.WarmestPlastic.Celsius),
            HeatMargin = Tenth(housing.Heat.PlasticLimitCelsius - housing.Heat.Planned.WarmestPlastic.Celsius),
            Screws = report.Shopping.Where(item => item.Item.StartsWith("screw ", StringComparison.Ordinal)).Sum(item => item.Count),
            Printer = printer.Name,
            Bed = [Rounded(printer.BedX), Rounded(printer.BedY)],
            BedMargin = Rounded(printer.BedMargin),
            Parts = [.. report.Parts.Select(part => Of(part, housing.Part(part.Name)!))],
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

    private static PartFigures Of(PartReport part, MadePart made) => new()
    {
        Name = part.Name,
        Filament = part.Filament,
        PrintedWith = part.PrintedWith,
        Grams = Math.Round(part.Estimate.Grams, 1),
        Colour = made.Plan.Filament.Screen,
        At = Rounded(Measure.Bounds(made.PrintMesh.Mesh).Min),
        Size = Rounded(part.Size),
        Shape = ShapeOf(made.PrintMesh.Mesh),
    };

    /// <summary>The values that tell a variant, for its row.</summary>
    public static IReadOnlyList<NamedText> ValuesOf(IEnumerable<PlanSetting> telling) =>
        [.. telling.Select(setting => new NamedText(setting.Path, setting.Value.Raw))];

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

    private static double[] Rounded(Point3 size) => [Rounded(size.X), Rounded(size.Y), Rounded(size.Z)];

    // Adding zero makes a negative zero positive.
    private static double Rounded(double value) => Math.Round(value, 3) + 0;
}
