namespace ShellForge.Board.Yaml.Tree;

/// <summary>The valid name that a mistyped one was probably meant to be.</summary>
public static class NearestName
{
    // Longer words are cut before comparing, so that the work stays small whatever is typed.
    private const int LongestCompared = 60;

    /// <summary>
    /// The candidate with the fewest edits (insert, drop, change, swap of neighbours), the first among equals; null when none
    /// is within a third of the word's length, at least two edits, and none starts with the word or is a part of it.
    /// </summary>
    public static string? In(string word, IEnumerable<string> candidates)
    {
        string typed = Cut(word);
        string? best = null;
        int fewest = int.MaxValue;
        foreach (string candidate in candidates)
        {
            int edits = Edits(typed, Cut(candidate));
            if (edits < fewest)
            {
                (best, fewest) = (candidate, edits);
            }
        }

        int allowed = Math.Max(2, typed.Length / 3);
        if (best is not null && fewest <= allowed && fewest < Math.Max(typed.Length, best.Length))
        {
            return best;
        }

        return typed.Length < 2
            ? null
            : candidates.FirstOrDefault(c =>
                c.StartsWith(typed, StringComparison.OrdinalIgnoreCase)
                || (c.Length >= 3 && typed.Contains(c, StringComparison.OrdinalIgnoreCase)));
    }

    private static string Cut(string word) =>
        (word.Length <= LongestCompared ? word : word[..LongestCompared]).ToLowerInvariant();

    private static int Edits(string a, string b)
    {
        int[,] cost = new int[a.Length + 1, b.Length + 1];
        for (int i = 0; i <= a.Length; i++)
        {
            cost[i, 0] = i;
        }

        for (int j = 0; j <= b.Length; j++)
        {
            cost[0, j] = j;
        }

        for (int i = 1; i <= a.Length; i++)
        {
            for (int j = 1; j <= b.Length; j++)
            {
                int change = cost[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                int least = Math.Min(change, Math.Min(cost[i - 1, j], cost[i, j - 1]) + 1);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    least = Math.Min(least, cost[i - 2, j - 2] + 1);
                }

                cost[i, j] = least;
            }
        }

        return cost[a.Length, b.Length];
    }
}
