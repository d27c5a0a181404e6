namespace ShellForge.Import.Patterns;

/// <summary>Finds how far a pattern goes without trying every length.</summary>
internal static class Beginnings
{
    // So short a beginning says little: one that holds nothing yet may be part of a longer one that does.
    private const int Settled = 12;

    /// <summary>
    /// The longest beginning that holds something, where what begins one that does holds it as well; 0 where none does. The length is
    /// doubled as long as that goes, then halved towards where it ends.
    /// </summary>
    /// <param name="fewest">The shortest length.</param>
    /// <param name="most">The longest.</param>
    /// <param name="holds">Whether a beginning of a length holds it.</param>
    public static int Longest(int fewest, int most, Func<int, bool> holds)
    {
        int good = 0;
        int bad = most + 1;
        for (int count = fewest; count < bad; count = Math.Max(count + 1, Math.Min(2 * count, bad - 1)))
        {
            if (holds(count))
            {
                good = count;
            }
            else if (good > 0 || count >= Settled)
            {
                bad = count;
            }
        }

        while (good > 0 && bad - good > 1)
        {
            int middle = (good + bad) / 2;
            (good, bad) = holds(middle) ? (middle, bad) : (good, middle);
        }

        return good;
    }
}
