using System.Collections.Immutable;
using System.ComponentModel;

namespace ShellForge.Sweep.Comparing;

/// <summary>Something that differs between two housings.</summary>
/// <param name="What">What it is: a path, a part, an item.</param>
/// <param name="Before">As it is in the first; empty where it has none.</param>
/// <param name="After">As it is in the second; empty where it has none.</param>
/// <param name="Why">Why the second has it so; empty where nothing is said.</param>
public sealed record Change(
    [property: Description("A path, a part, an item.")] string What,
    [property: Description("In the first; empty where it has none.")] string Before,
    [property: Description("In the second; empty where it has none.")] string After,
    [property: Description("Why the second has it so; empty where nothing is said.")] string Why);

/// <summary>What differs between two housings.</summary>
public sealed record HousingComparison
{
    /// <summary>What is called or judged otherwise.</summary>
    public required ImmutableArray<Change> Whole { get; init; }

    /// <summary>
    /// Values that rest on a place in the file or on the command line; those that are said somewhere else now come first.
    /// </summary>
    public required ImmutableArray<Change> Said { get; init; }

    /// <summary>Values that follow otherwise.</summary>
    public required ImmutableArray<Change> Follows { get; init; }

    /// <summary>Findings that came, went or say something else, worst first.</summary>
    public required ImmutableArray<Change> Findings { get; init; }

    /// <summary>Parts whose bytes or sizes differ.</summary>
    public required ImmutableArray<Change> Parts { get; init; }

    /// <summary>What is bought otherwise.</summary>
    public required ImmutableArray<Change> Shopping { get; init; }

    /// <summary>Whether nothing differs.</summary>
    public bool IsEmpty => All.All(list => list.Changes.IsEmpty);

    /// <summary>All lists with their titles, in the order in which they are shown.</summary>
    public ImmutableArray<(string Title, ImmutableArray<Change> Changes)> All =>
    [
        ("the whole", Whole), ("values of the file", Said), ("values that follow", Follows), ("findings", Findings), ("parts", Parts),
        ("to have at hand", Shopping),
    ];

    /// <summary>Compares two housings.</summary>
    public static HousingComparison Of(HousingState before, HousingState after)
    {
        ImmutableArray<Change> values = Differing(before.Values, after.Values, value => value.Value, value => value.Why);

        // A value whose place is in a file or on the command line rests on what somebody said there; all others are worked out.
        bool IsSaid(Change change) => (after.Values.GetValueOrDefault(change.What) ?? before.Values[change.What]).From is var from
            && (from.Contains(':', StringComparison.Ordinal) || from.EndsWith(".yaml", StringComparison.Ordinal));
        return new HousingComparison
        {
            Whole =
            [
                .. Different("name", before.Name, after.Name), .. Different("verdict", before.Verdict, after.Verdict),
                .. Differing(before.Figures, after.Figures, text => text, _ => ""),
            ],
            Said = [.. values.Where(IsSaid)
                .OrderBy(
                    change => before.Values.GetValueOrDefault(change.What)?.From == after.Values.GetValueOrDefault(change.What)?.From)],
            Follows = [.. values.Where(change => !IsSaid(change))],
            Findings = FindingsOf(before, after),
            Parts = PartsOf(before, after),
            Shopping = Differing(before.Shopping, after.Shopping, count => count, _ => ""),
        };
    }

    private static IEnumerable<Change> Different(string what, string before, string after) =>
        before == after ? [] : [new Change(what, before, after, "")];

    private static ImmutableArray<Change> Differing<T>(
        ImmutableSortedDictionary<string, T> before, ImmutableSortedDictionary<string, T> after, Func<T, string> text,
        Func<T, string> why) =>
    [
        .. before.Keys.Union(after.Keys).Order(StringComparer.Ordinal)
            .Select(key => new Change(
                key, before.TryGetValue(key, out T? old) ? text(old) : "", after.TryGetValue(key, out T? now) ? text(now) : "",
                now is null ? "" : why(now)))
            .Where(change => change.Before != change.After),
    ];

    private static ImmutableArray<Change> FindingsOf(HousingState before, HousingState after)
    {
        static string Key(StatedFinding finding) => $"{finding.Severity} {finding.Rule}, {finding.Subject}";
        static string Texts(HousingState of, string key) =>
            string.Join(" ", of.Findings.Where(finding => Key(finding) == key).Select(finding => finding.Message));
        return
        [
            .. after.Findings.Concat(before.Findings).OrderBy(finding => finding.Severity switch { "stop" => 0, "warn" => 1, _ => 2 })
                .Select(Key).Distinct()
                .Select(key => new Change(key, Texts(before, key), Texts(after, key), "")).Where(change => change.Before != change.After),
        ];
    }

    private static ImmutableArray<Change> PartsOf(HousingState before, HousingState after)
    {
        var parts = ImmutableArray.CreateBuilder<Change>();
        foreach (string name in before.Parts.Keys.Union(after.Parts.Keys).Order(StringComparer.Ordinal))
        {
            StatedPart? old = before.Parts.GetValueOrDefault(name);
            StatedPart? now = after.Parts.GetValueOrDefault(name);
            bool differs = old?.Size != now?.Size || old?.Grams != now?.Grams;
            string why = old is null ? "new" : now is null ? "gone"
                : old.Shape is null || now.Shape is null ? (differs ? "print it again" : "")
                : old.Shape != now.Shape ? "its bytes changed: print it again" : "";
            if (why.Length > 0)
            {
                parts.Add(new Change(name, Shown(old), Shown(now), why));
            }
        }

        return parts.ToImmutable();
    }

    private static string Shown(StatedPart? part) =>
        part is null ? "" : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{part.Size} mm, {part.Grams} g");
}
