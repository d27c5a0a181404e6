using System.Collections.Immutable;

namespace ShellForge.Output.Report;

/// <summary>
/// Times in whole minutes that add up: what all of them take together is rounded, and shared out with each time rounded down or up, up for
/// those that rounding down would take most from. Rounded one by one, three parts can be a minute off their sum.
/// </summary>
internal static class WholeMinutes
{
    /// <summary>The times in whole minutes, in their order.</summary>
    /// <param name="minutes">Times, minutes, none negative.</param>
    /// <returns>Each its time to within a minute; together the rounded sum.</returns>
    public static ImmutableArray<int> Of(IReadOnlyList<double> minutes)
    {
        int[] whole = [.. minutes.Select(time => (int)Math.Floor(time))];
        int left = (int)Math.Round(minutes.Sum(), MidpointRounding.AwayFromZero) - whole.Sum();
        foreach (int up in Enumerable.Range(0, whole.Length).OrderByDescending(i => minutes[i] - whole[i]).Take(left))
        {
            whole[up]++;
        }

        return [.. whole];
    }
}
