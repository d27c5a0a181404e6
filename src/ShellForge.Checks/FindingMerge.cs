using System.Globalization;
using System.Text.RegularExpressions;
using ShellForge.Checks.Findings;

namespace ShellForge.Checks;

/// <summary>
/// Equal findings on numbered things of one kind ("screw 1" to "screw 4") told as one: its subject names all of them, value and place are
/// those of the worst.
/// </summary>
internal static partial class FindingMerge
{
    // So many numbers in a row become "1 to 3".
    private const int ShortestRange = 3;

    /// <summary>The findings in their order, equal ones at the place of the first.</summary>
    public static IEnumerable<Finding> Merge(IEnumerable<Finding> findings) => findings
        .GroupBy(finding => Numbered().Match(finding.Subject) is { Success: true } name
            ? (object)(finding.Rule, finding.Severity, finding.Message, finding.Limit, finding.Unit, finding.Remedy,
                Kind: name.Groups[1].Value) : finding,
            (key, equal) => One([.. equal]));

    private static Finding One(Finding[] equal)
    {
        int[] numbers = [.. equal.Select(finding => Numbered().Match(finding.Subject)).Where(name => name.Success)
            .Select(name => int.Parse(name.Groups[2].Value, CultureInfo.InvariantCulture)).Distinct().Order()];
        return numbers.Length < 2
            ? equal[0]
            : equal.MaxBy(finding => Math.Abs((finding.Measured - finding.Limit) ?? 0))! with
            {
                Subject = $"{Numbered().Match(equal[0].Subject).Groups[1].Value} {Listed(numbers)}",
            };
    }

    // "1 to 4", "1 and 3", "1, 3 and 6 to 8".
    private static string Listed(int[] numbers)
    {
        var runs = new List<string>();
        for (int i = 0; i < numbers.Length;)
        {
            int end = i;
            while (end + 1 < numbers.Length && numbers[end + 1] == numbers[end] + 1)
            {
                end++;
            }

            bool row = end - i + 1 >= ShortestRange;
            runs.AddRange(row
                ? [string.Create(CultureInfo.InvariantCulture, $"{numbers[i]} to {numbers[end]}")]
                : numbers[i..(end + 1)].Select(number => number.ToString(CultureInfo.InvariantCulture)));
            i = end + 1;
        }

        return runs.Count == 1 ? runs[0] : $"{string.Join(", ", runs[..^1])} and {runs[^1]}";
    }

    [GeneratedRegex("^(.*[^0-9 ]) ([0-9]{1,9})$", RegexOptions.CultureInvariant)]
    private static partial Regex Numbered();
}
