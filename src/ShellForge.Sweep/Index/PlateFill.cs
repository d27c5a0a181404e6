using System.Collections.Immutable;
using ShellForge.Sweep.Rows;

namespace ShellForge.Sweep.Index;

/// <summary>A print job of a batch: a part with those that are printed into it.</summary>
/// <param name="Name">The part as its file names it.</param>
/// <param name="Printer">Its printer.</param>
/// <param name="Filaments">Its filaments, in order.</param>
/// <param name="Bed">The bed, mm.</param>
/// <param name="Size">Its rectangle on the bed, mm.</param>
internal sealed record PlateJob(string Name, string Printer, string Filaments, (double X, double Y) Bed, (double X, double Y) Size)
{
    /// <summary>The jobs of a variant.</summary>
    public static IEnumerable<PlateJob> Of(VariantRow row)
    {
        HousingFigures housing = row.Housing!;
        foreach (IGrouping<string, PartFigures> job in housing.Parts.GroupBy(part => part.PrintedWith ?? part.Name, StringComparer.Ordinal))
        {
            yield return new PlateJob(
                $"{job.Key}-{row.Code}", housing.Printer,
                string.Join(", ", job.Select(part => part.Filament).Distinct().Order(StringComparer.Ordinal)),
                (housing.Bed[0], housing.Bed[1]), (job.Max(part => part.Size[0]), job.Max(part => part.Size[1])));
        }
    }
}

/// <summary>
/// Lays the jobs of a batch on as few plates as shelves need: jobs of one printer and one set of filaments, deepest first, side by side
/// until a shelf is full, shelf behind shelf until the bed is. What is too large for the bed lies alone and is told by its own variant.
/// </summary>
internal static class PlateFill
{
    // Room between two parts for a brush or a scraper, mm.
    private const double Between = 5;

    public static ImmutableArray<BatchPlate> Of(IReadOnlyList<PlateJob> jobs)
    {
        var plates = ImmutableArray.CreateBuilder<BatchPlate>();
        foreach (var group in jobs.GroupBy(job => (job.Printer, job.Filaments)).OrderBy(g => g.Key.Printer, StringComparer.Ordinal)
            .ThenBy(g => g.Key.Filaments, StringComparer.Ordinal))
        {
            PlateJob[] ordered =
                [.. group.OrderByDescending(job => job.Size.Y).ThenByDescending(job => job.Size.X).ThenBy(job => job.Name,
                    StringComparer.Ordinal)];
            var open = new List<Plate>();
            foreach (PlateJob job in ordered)
            {
                if (!open.Any(plate => plate.Takes(job)))
                {
                    var plate = new Plate(job.Bed);
                    plate.Takes(job);
                    open.Add(plate);
                }
            }

            plates.AddRange(
                open.Select(
                    plate => new BatchPlate(group.Key.Printer, group.Key.Filaments.Split(", "), plate.Names, Math.Round(plate.Share, 2))));
        }

        return plates.ToImmutable();
    }

    private sealed class Plate((double X, double Y) bed)
    {
        private readonly List<string> _names = [];
        private readonly List<(double Depth, double Used)> _shelves = [];
        private double _area;
        private bool _full;

        public IReadOnlyList<string> Names => _names;

        public double Share => Math.Min(1, _area / (bed.X * bed.Y));

        public bool Takes(PlateJob job)
        {
            bool tooLarge = job.Size.X > bed.X || job.Size.Y > bed.Y;
            if (_full || (tooLarge && _names.Count > 0))
            {
                return false;
            }

            _full = tooLarge;
            int shelf = _shelves.FindIndex(s => s.Depth >= job.Size.Y && s.Used + Between + job.Size.X <= bed.X);
            if (shelf >= 0)
            {
                _shelves[shelf] = (_shelves[shelf].Depth, _shelves[shelf].Used + Between + job.Size.X);
            }
            else
            {
                double deep = _shelves.Sum(s => s.Depth + Between);
                if (_names.Count > 0 && deep + job.Size.Y > bed.Y)
                {
                    return false;
                }

                _shelves.Add((job.Size.Y, job.Size.X));
            }

            _names.Add(job.Name);
            _area += job.Size.X * job.Size.Y;
            return true;
        }
    }
}
