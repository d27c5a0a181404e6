
namespace ShellForge.Import.Merging;

/// <summary>Sorts designators as people count: D2 before D10.</summary>
internal static class ReferenceOrder
{
    private const long LargestCounted = 100_000_000;

    public static (string Letters, long Number, string Tail) Key(string reference)
    {
        int at = reference.AsSpan().IndexOfAnyInRange('0', '9');
        if (at < 0)
        {
            return (reference, -1, "");
        }

        int end = at;
        while (end < reference.Length && char.IsAsciiDigit(reference[end]) && end - at < 15)
        {
            end++;
        }

        return (reference[..at],
            long.Parse(reference.AsSpan(at, end - at), System.Globalization.NumberStyles.None,
                System.Globalization.CultureInfo.InvariantCulture), reference[end..]);
    }

    /// <summary>Designators that more than one placed part has: hand-over files repeat NOREFDES.</summary>
    public static HashSet<string> Repeated(IEnumerable<ImportedPart> parts) => [.. parts.Where(p => p.Placed && p.Skip is null)
        .GroupBy(p => p.Reference).Where(same => same.Count() > 1).Select(same => same.Key)];

    /// <summary>
    /// Where designators count on one by one as a pattern of the board file does, D9, D10, D11: the first and how many, in the order given.
    /// </summary>
    public static List<(int First, int Count)> CountedRuns(IReadOnlyList<string> references)
    {
        var runs = new List<(int First, int Count)>();
        for (int i = 0; i < references.Count; i++)
        {
            if (runs.Count > 0 && runs[^1].First + runs[^1].Count == i && Follows(references[i - 1], references[i]))
            {
                runs[^1] = (runs[^1].First, runs[^1].Count + 1);
            }
            else
            {
                runs.Add((i, 1));
            }
        }

        return runs;
    }

    // D09 is followed by D10, but D01 by D2 there: of numbers that are filled up with zeros, none counts on.
    private static bool Follows(string one, string next)
    {
        (string letters, long number, string tail) = Key(one);
        return number >= 0 && number < LargestCounted && tail.Length == 0 && one == Plain(letters, number)
            && next == Plain(letters, number + 1);
    }

    private static string Plain(string letters, long number) =>
        letters + number.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
