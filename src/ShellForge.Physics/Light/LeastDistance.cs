namespace ShellForge.Physics.Light;

/// <summary>The smallest distance of a diffuser at which light is as even as asked, found with the model that judges it.</summary>
public static class LeastDistance
{
    // Steps of the first distance that is tried: most diffusers lie two to eight times as far.
    private const int FirstProbe = 15;

    // Once light is less even than at a nearer distance by this, it stays so: rims and the ends of rows darken as a diffuser moves away.
    private const double Falls = 0.1;

    // Of two distances with light alike to this the smaller one is better: within the noise of a grid.
    private const double Alike = 0.01;

    // Between two distances with light alike to this nothing is looked for: it is that noise which would decide.
    private const double Same = 0.003;

    /// <summary>
    /// Looks from below in doubling steps, near LEDs light few cells each, so small distances are quick to judge, and halves between a
    /// distance that is too small and one that is enough. Evenness grows with distance between LEDs that have neighbours all round; where
    /// they end it falls again.
    /// </summary>
    /// <param name="evennessAt">Smallest over mean at a distance in mm.</param>
    /// <param name="wanted">Smallest over mean asked for, 0 to 1.</param>
    /// <param name="least">Smallest distance that comes into question, mm.</param>
    /// <param name="most">Largest distance that comes into question, mm.</param>
    /// <param name="step">Distances are whole numbers of steps above <paramref name="least"/>, mm.</param>
    /// <returns>
    /// The distance, mm, and whether light is as even there as asked; where it is nowhere, the most even distance of those tried.
    /// </returns>
    public static (double Distance, bool IsEnough) For(
        Func<double, double> evennessAt, double wanted, double least, double most, double step)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(step);
        int last = Math.Max(0, (int)Math.Floor((most - least) / step));
        var tried = new SortedDictionary<int, double>();
        double At(int probe) => tried.TryGetValue(probe, out double known) ? known : tried[probe] = evennessAt(least + (probe * step));
        int low = -1;
        int? high = null;
        for (int probe = Math.Min(FirstProbe, last); high is null; probe = Math.Min((2 * probe) + 1, last))
        {
            if (At(probe) >= wanted)
            {
                high = probe;
            }
            else if (probe == last || tried.Values.Max() > At(probe) + Falls)
            {
                break;
            }
            else
            {
                low = probe;
            }
        }

        // Between two that are too little light may be more even than at both.
        foreach (int between in high is null ? BesideBest(tried, last) : [])
        {
            if (high is null && At(between) >= wanted)
            {
                (low, high) = (tried.Keys.Where(probe => probe < between).DefaultIfEmpty(-1).Max(), between);
            }
        }

        if (high is not int enough)
        {
            double best = tried.Values.Max() - Alike;
            return (least + (tried.First(each => each.Value >= best).Key * step), false);
        }

        while (enough - low > 1 && !(low >= 0 && Math.Abs(At(enough) - At(low)) < Same))
        {
            int middle = (low + enough) / 2;
            (low, enough) = At(middle) >= wanted ? (low, middle) : (middle, enough);
        }

        return (low < 0 && At(0) >= wanted ? least : least + (enough * step), true);
    }

    // Halfway from the most even distance to those tried beside it.
    private static int[] BesideBest(SortedDictionary<int, double> tried, int last)
    {
        int best = tried.MaxBy(each => each.Value).Key;
        int before = tried.Keys.Where(probe => probe < best).DefaultIfEmpty(0).Max();
        int after = tried.Keys.Where(probe => probe > best).DefaultIfEmpty(last).Min();
        return [.. new[] { (before + best) / 2, (best + after) / 2 }.Where(probe => !tried.ContainsKey(probe))];
    }
}
