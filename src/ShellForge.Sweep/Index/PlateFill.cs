using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using ShellForge.Formats.ThreeMf;
using ShellForge.Geometry.Numerics;
using ShellForge.Sweep.Folder;
using ShellForge.Sweep.Rows;

namespace ShellForge.Sweep.Index;

/// <summary>A print job of a batch: a part of a variant with those that are printed into it.</summary>
/// <param name="Name">The part as its file names it.</param>
/// <param name="Row">Its variant.</param>
/// <param name="Parts">Its bodies, the part that gives the job its name first.</param>
internal sealed record PlateJob(string Name, VariantRow Row, ImmutableArray<PartFigures> Parts)
{
    /// <summary>The jobs of a variant.</summary>
    public static IEnumerable<PlateJob> Of(VariantRow row) =>
        row.Housing!.Parts.GroupBy(part => part.PrintedWith ?? part.Name, StringComparer.Ordinal)
            .Select(job => new PlateJob($"{job.Key}-{row.Code}", row, [.. job.OrderBy(part => part.PrintedWith is not null)]));

    /// <summary>Its filaments, in the order of their names.</summary>
    public string Filaments => string.Join(", ", Parts.Select(part => part.Filament).Distinct().Order(StringComparer.Ordinal));

    /// <summary>The bed that it is printed on.</summary>
    public PrintBed Bed => new(Row.Housing!.Bed[0], Row.Housing.Bed[1], Row.Housing.BedMargin, 1);

    /// <summary>Its box, mm.</summary>
    public JobBox Box => JobBox.Of(Parts.Select(part => (part.Filament, BoundsOf(part))));

    private static Box3 BoundsOf(PartFigures part)
    {
        var at = new Point3(part.At[0], part.At[1], part.At[2]);
        return Box3.Empty.Including(at).Including(at + new Point3(part.Size[0], part.Size[1], part.Size[2]));
    }
}

/// <summary>A plate of a batch with its jobs in their places.</summary>
/// <param name="File">Name of its 3MF file: it changes with everything that lies on the plate.</param>
/// <param name="Jobs">Jobs and how far each is moved, mm.</param>
internal sealed partial record FilledPlate(string File, ImmutableArray<(PlateJob Job, Point3 Shift)> Jobs)
{
    private const int LettersOfDigest = 8;

    /// <summary>The plate of a number.</summary>
    public static FilledPlate Of(int number, ImmutableArray<(PlateJob Job, Point3 Shift)> jobs)
    {
        string text = string.Join('\n', jobs.Select(placed => string.Create(CultureInfo.InvariantCulture,
            $"{placed.Job.Row.Key} {placed.Job.Name} {placed.Shift.X} {placed.Shift.Y}")));
        string digest = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)))[..LettersOfDigest];
        return new FilledPlate(string.Create(CultureInfo.InvariantCulture, $"plate-{number:000}_{digest}.3mf"), jobs);
    }

    /// <summary>Whether a file has a name that <see cref="Of"/> gives.</summary>
    public static bool IsFile(string name) => FileName.IsMatch(name);

    [GeneratedRegex(@"^plate-[0-9]{3,}_[0-9a-f]{8}\.3mf\z", RegexOptions.CultureInvariant)]
    private static partial Regex FileName { get; }

    /// <summary>The plate as the index tells it.</summary>
    public BatchPlate Told(SweepFolder folder)
    {
        string file = $"{BatchPlates.Folder}/{File}";
        PlateJob first = Jobs[0].Job;
        return new BatchPlate(
            first.Row.Housing!.Printer, first.Filaments.Split(", "), [.. Jobs.Select(placed => placed.Job.Name)], Math.Round(BedShare, 2),
            folder.Has(file) ? file : null);
    }

    /// <summary>Share of the bed that can be used under the rectangles of its jobs, 0 to 1.</summary>
    private double BedShare
    {
        get
        {
            PrintBed bed = Jobs[0].Job.Bed;
            double area = Jobs.Select(placed => placed.Job.Box.Bounds.Size).Sum(size => size.X * size.Y);
            return Math.Min(1, area / ((bed.Width - (2 * bed.Margin)) * (bed.Depth - (2 * bed.Margin))));
        }
    }
}

/// <summary>Lays the jobs of a batch on plates: those of one printer and one set of filaments together.</summary>
internal static class PlateFill
{
    public static ImmutableArray<FilledPlate> Of(IReadOnlyList<PlateJob> jobs)
    {
        var plates = ImmutableArray.CreateBuilder<FilledPlate>();
        foreach (IGrouping<(string Printer, PrintBed Bed, string Filaments), PlateJob> group in jobs
            .GroupBy(job => (job.Row.Housing!.Printer, job.Bed, job.Filaments)).OrderBy(g => g.Key.Printer, StringComparer.Ordinal)
            .ThenBy(g => g.Key.Filaments, StringComparer.Ordinal))
        {
            // The same parts of all variants one after the other: they are of about one depth.
            PlateJob[] alike = [.. group.OrderBy(job => job.Parts[0].Name, StringComparer.Ordinal)];
            foreach (ImmutableArray<PlacedBox> plate in PlateLayout.Fill([.. alike.Select(job => job.Box)], group.Key.Bed))
            {
                plates.Add(FilledPlate.Of(plates.Count + 1, [.. plate.Select(placed => (alike[placed.Job], placed.Shift))]));
            }
        }

        return plates.ToImmutable();
    }
}
