using System.Collections.Immutable;
using ShellForge.Sweep.Rows;

namespace ShellForge.Sweep.Index;

/// <summary>Something to have at hand for the whole batch.</summary>
/// <param name="Item">What.</param>
/// <param name="Needed">How many are used.</param>
/// <param name="ToBuy">How many to buy, with spares.</param>
public sealed record BatchItem(string Item, int Needed, int ToBuy);

/// <summary>A plate of parts that can be printed together.</summary>
/// <param name="Printer">The printer.</param>
/// <param name="Filaments">The filaments on it.</param>
/// <param name="Parts">The parts as files name them.</param>
/// <param name="BedShare">Share of the bed under their rectangles, 0 to 1.</param>
/// <param name="File">Its 3MF file from the sweep's folder; null where it was not asked for.</param>
public sealed record BatchPlate(
    string Printer, IReadOnlyList<string> Filaments, IReadOnlyList<string> Parts, double BedShare, string? File);

/// <summary>One of each variant that can be printed, bought and printed together.</summary>
/// <param name="Shopping">What to have at hand.</param>
/// <param name="Filament">Grams of filament.</param>
/// <param name="Plates">Plates of the first variants.</param>
/// <param name="Variants">How many variants are counted.</param>
internal sealed record Batch(
    ImmutableArray<BatchItem> Shopping, ImmutableArray<BatchItem> Filament, ImmutableArray<FilledPlate> Plates, int Variants)
{
    /// <summary>Variants whose parts are laid out on plates: nobody prints more in one go.</summary>
    public const int MostPlated = 2000;

    private const double Percent = 100;

    /// <summary>Counts up a batch in one pass.</summary>
    /// <param name="rows">The variants; those with a stop, or without a housing, are left out.</param>
    /// <param name="sparesPercent">How many more small parts are bought than used.</param>
    public static Batch Of(IEnumerable<VariantRow> rows, double sparesPercent)
    {
        var items = new OrderedDictionary<string, int>(StringComparer.Ordinal);
        var grams = new SortedDictionary<string, double>(StringComparer.Ordinal);
        var jobs = new List<PlateJob>();
        int variants = 0;
        foreach (VariantRow row in rows.Where(row => row.Housing is { Stops: 0 }))
        {
            foreach (NamedCount item in row.Housing!.Shopping)
            {
                items[item.Item] = items.GetValueOrDefault(item.Item) + item.Count;
            }

            foreach (PartFigures part in row.Housing.Parts)
            {
                grams[part.Filament] = grams.GetValueOrDefault(part.Filament) + part.Grams;
            }

            if (++variants <= MostPlated)
            {
                jobs.AddRange(PlateJob.Of(row));
            }
        }

        return new Batch(
            [.. items.Select(
                item => new BatchItem(item.Key, item.Value, item.Value + (int)Math.Ceiling(item.Value * sparesPercent / Percent)))],
            [.. grams.Select(
                entry => new BatchItem(entry.Key, (int)Math.Ceiling(entry.Value),
                    (int)Math.Ceiling(entry.Value * (1 + (sparesPercent / Percent)))))],
            PlateFill.Of(jobs), variants);
    }
}
