using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Yaml.Variation;
using ShellForge.Sweep.Rows;

namespace ShellForge.Sweep.Seeking;

/// <summary>
/// The variant that meets a wish best among those without a stop, what stands in the way of a better one, and what nothing else beats in
/// everything wished. Ties go to the earlier variant of the plan, every time.
/// </summary>
/// <param name="Row">The best; null where every variant has a stop.</param>
/// <param name="Limit">What stops a better one; null where nothing does.</param>
/// <param name="Front">Variants that none other beats in all that is wished, in the plan's order.</param>
public sealed record BestChoice(VariantRow? Row, string? Limit, ImmutableArray<VariantRow> Front)
{
    private const double Percent = 100;

    // What a gap counts that is too wide to be looked for, mm.
    private const double WideGap = 1;

    // So many are shown of a front; a longer one is for the table.
    private const int LongestFront = 40;

    /// <summary>Chooses in one pass.</summary>
    public static BestChoice Of(BestWish wish, IEnumerable<VariantRow> rows)
    {
        VariantRow? best = null;
        VariantRow? stopped = null;
        var front = new List<VariantRow>();
        foreach (VariantRow row in rows.Where(row => row.Housing is not null))
        {
            if (row.Housing!.Stops > 0)
            {
                stopped = stopped is null || Score(wish, row.Housing) < Score(wish, stopped.Housing!) ? row : stopped;
                continue;
            }

            best = best is null || Score(wish, row.Housing) < Score(wish, best.Housing!) ? row : best;
            if (!front.Any(other => Beats(wish, other.Housing!, row.Housing)))
            {
                front.RemoveAll(other => Beats(wish, row.Housing, other.Housing!));
                front.Add(row);
            }
        }

        string? limit = stopped is not null && (best is null || Score(wish, stopped.Housing!) < Score(wish, best.Housing!))
            ? Told(stopped) : null;
        return new BestChoice(best, limit, [.. front.Take(LongestFront)]);
    }

    /// <summary>What a housing is worth to a wish: less is better. Weights count by mm, gram, percent of evenness and kelvin.</summary>
    public static double Score(BestWish wish, HousingFigures housing) => wish.Weights.Sum(one => one.Weight * Figure(one.Word, housing));

    /// <summary>The wish as a person says it.</summary>
    public static string Words(BestWish wish) =>
        string.Join(", ", wish.Weights.Where(one => one.Weight > 0).Select(one => wish.Weights.Length == 1
        ? one.Word : string.Create(CultureInfo.InvariantCulture, $"{one.Word} x {one.Weight}")));

    private static double Figure(string word, HousingFigures housing) => word switch
    {
        "height" => housing.Size[2],
        "plastic" => housing.Grams,
        "evenness" => -Percent * (housing.Evenness ?? 0),
        "coolness" => housing.WarmestPlastic,
        _ => -(housing.Clearance ?? WideGap),
    };

    private static bool Beats(BestWish wish, HousingFigures one, HousingFigures other)
    {
        double[] differences = [.. wish.Weights.Where(w => w.Weight > 0).Select(w => Figure(w.Word, one) - Figure(w.Word, other))];
        return differences.All(d => d <= 0) && differences.Any(d => d < 0);
    }

    private static string Told(VariantRow row)
    {
        FindingFigures stop = row.Housing!.Findings.First(finding => finding.Severity == "stop");
        return $"{row.Folder} would be better, but: {stop.Rule}, {stop.Subject}: {stop.Message}";
    }
}
