using ShellForge.Board.Yaml.Variation;

namespace ShellForge.Sweep.Seeking;

/// <summary>Finds the best step of a range with few looks at it. Ties go to the earlier step, every time.</summary>
public static class LineSearch
{
    /// <summary>The best step; null where none can be printed, as far as the search sees.</summary>
    /// <param name="count">How many steps the range has, at least 1.</param>
    /// <param name="shape">How the figure runs.</param>
    /// <param name="score">What a step is worth, less is better; null where it can't be printed. Asked once a step.</param>
    public static int? Best(int count, RangeShape shape, Func<int, double?> score)
    {
        var known = new Dictionary<int, double?>();
        double? At(int i) => known.TryGetValue(i, out double? seen) ? seen : known[i] = score(i);
        if (shape == RangeShape.Monotone)
        {
            Bisect(count, At);
        }
        else
        {
            Narrow(count, At);
        }

        return known.Where(entry => entry.Value is not null).OrderBy(entry => entry.Value).ThenBy(entry => entry.Key)
            .Select(entry => (int?)entry.Key).FirstOrDefault();
    }

    // The best is one end of what can be printed: both ends are looked at, and where one is stopped, the border between.
    private static void Bisect(int count, Func<int, double?> at)
    {
        int first = 0;
        int last = count - 1;
        bool firstGood = at(first) is not null;
        bool lastGood = at(last) is not null;
        if (firstGood == lastGood)
        {
            return;
        }

        (int good, int bad) = firstGood ? (first, last) : (last, first);
        while (Math.Abs(good - bad) > 1)
        {
            int middle = (good + bad) / 2;
            if (at(middle) is not null)
            {
                good = middle;
            }
            else
            {
                bad = middle;
            }
        }
    }

    // Golden section on whole steps. A stopped step is worse than any other; of two stopped ones the middle of the range decides.
    private static void Narrow(int count, Func<int, double?> at)
    {
        const double golden = 0.6180339887498949;
        int low = 0;
        int high = count - 1;
        while (high - low > 3)
        {
            int reach = Math.Max(1, (int)Math.Round(golden * (high - low)));
            (int left, int right) = (high - reach, low + reach);
            if (left >= right)
            {
                right = left + 1;
            }

            (double? one, double? other) = (at(left), at(right));
            bool leftIsBetter = (one, other) switch
            {
                (null, null) => left + right >= count - 1,
                (null, _) => false,
                (_, null) => true,
                _ => one <= other,
            };
            (low, high) = leftIsBetter ? (low, right) : (left, high);
        }

        for (int i = low; i <= high; i++)
        {
            at(i);
        }
    }
}
