using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text.Json;
using ShellForge.Output.Report;

namespace ShellForge.Sweep.Comparing;

/// <summary>A value of a plan with its reason.</summary>
/// <param name="Value">The value as text.</param>
/// <param name="From">Where it comes from.</param>
/// <param name="Why">The reason.</param>
public sealed record StatedValue(string Value, string From, string Why);

/// <summary>A finding as a report states it.</summary>
/// <param name="Severity">stop, warn or note.</param>
/// <param name="Rule">The rule.</param>
/// <param name="Subject">What it is about.</param>
/// <param name="Message">What is the matter.</param>
public sealed record StatedFinding(string Severity, string Rule, string Subject, string Message);

/// <summary>A part as a report states it.</summary>
/// <param name="Size">Extent in print orientation, mm, as text.</param>
/// <param name="Grams">Grams of solid plastic.</param>
/// <param name="Shape">Hash of the triangles in its file; null where there is no file to look at.</param>
public sealed record StatedPart(string Size, double Grams, string? Shape);

/// <summary>
/// A housing as its report states it: what two housings are compared by. A report of another version is read as far as it is understood.
/// </summary>
public sealed record HousingState
{
    // An STL's first bytes name the part; the triangles follow.
    private const int StlTitle = 80;

    /// <summary>What the housing is called.</summary>
    public required string Name { get; init; }

    /// <summary>print, mind-warnings or do-not-print.</summary>
    public required string Verdict { get; init; }

    /// <summary>Values by path.</summary>
    public required ImmutableSortedDictionary<string, StatedValue> Values { get; init; }

    /// <summary>Findings, worst first.</summary>
    public required ImmutableArray<StatedFinding> Findings { get; init; }

    /// <summary>Parts by name.</summary>
    public required ImmutableSortedDictionary<string, StatedPart> Parts { get; init; }

    /// <summary>What to have at hand, by item.</summary>
    public required ImmutableSortedDictionary<string, string> Shopping { get; init; }

    /// <summary>Figures of the whole, by what they are.</summary>
    public required ImmutableSortedDictionary<string, string> Figures { get; init; }

    /// <summary>Reads a report.</summary>
    /// <param name="report">The bytes of <c>report.json</c>.</param>
    /// <param name="file">The bytes of a file beside it; null where it is not there.</param>
    /// <returns>The state; null where this is no report of ours.</returns>
    public static HousingState? Read(byte[] report, Func<string, byte[]?> file)
    {
        try
        {
            using JsonDocument json = JsonDocument.Parse(report);
            JsonElement root = json.RootElement;
            return root.ValueKind == JsonValueKind.Object && Text(root, "format") == ReportJson.Format ? Of(root, file) : null;
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException or FormatException)
        {
            // Not JSON, or one that somebody has edited into another shape.
            return null;
        }
    }

    private static HousingState Of(JsonElement root, Func<string, byte[]?> file) => new()
    {
        Name = Text(root, "name") ?? "",
        Verdict = Text(root, "verdict") ?? "",
        Values = ByName(Members(root, "resolved"), entry => entry.Name, entry =>
            new StatedValue(Text(entry.Value, "value") ?? "", Text(entry.Value, "from") ?? "", Text(entry.Value, "why") ?? "")),
        Findings =
            [.. Items(root, "findings")
                .Select(f => new StatedFinding(Text(f, "severity") ?? "", Text(f, "rule") ?? "", Text(f, "subject") ?? "",
                    Text(f, "message") ?? ""))],
        Parts = ByName(Items(root, "parts"), part => Text(part, "name") ?? "", part => Part(part, file)),
        Shopping = ByName(Items(root, "shopping"), item => Text(item, "item") ?? "", item => Number(item, "count") ?? ""),
        Figures = Figured(root),
    };

    // Of two of one name, which only an edited report has, the first counts.
    private static ImmutableSortedDictionary<string, T> ByName<TItem, T>(IEnumerable<TItem> items, Func<TItem, string> name,
        Func<TItem, T> state)
    {
        var all = ImmutableSortedDictionary.CreateBuilder<string, T>(StringComparer.Ordinal);
        foreach (TItem item in items)
        {
            all.TryAdd(name(item), state(item));
        }

        return all.ToImmutable();
    }

    private static StatedPart Part(JsonElement part, Func<string, byte[]?> file)
    {
        byte[]? bytes = Text(part, "file") is { } name && name == Path.GetFileName(name) ? file(name) : null;
        return new StatedPart(
            string.Join(" x ", Items(part, "size_mm").Select(side => side.GetRawText())),
            part.TryGetProperty("mass_g", out JsonElement mass) ? mass.GetDouble() : 0,
            bytes is null || bytes.Length < StlTitle ? null : Convert.ToHexStringLower(SHA256.HashData(bytes.AsSpan(StlTitle))));
    }

    private static ImmutableSortedDictionary<string, string> Figured(JsonElement root)
    {
        var figures = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        void Add(string title, string unit, params string[] path)
        {
            JsonElement at = root;
            foreach (string key in path)
            {
                if (at.ValueKind != JsonValueKind.Object || !at.TryGetProperty(key, out at))
                {
                    return;
                }
            }

            if (at.ValueKind == JsonValueKind.Number)
            {
                figures[title] = at.GetRawText() + unit;
            }
        }

        Add("plastic", " g", "print", "plastic_g");
        Add("printing", " min", "print", "minutes");
        Add("evenness of the light", "", "physics", "light", "minimum_over_mean");
        Add("warmest plastic below its limit", " K", "physics", "heat", "margin_kelvin");
        Add("largest brightness that stays cool", "", "physics", "heat", "largest_brightness");
        return figures.ToImmutable();
    }

    private static string? Text(JsonElement of, string key) =>
        of.TryGetProperty(key, out JsonElement value) && value.ValueKind == JsonValueKind.String ? value.GetString() : null;

    private static string? Number(JsonElement of, string key) => of.TryGetProperty(key, out JsonElement value) ? value.GetRawText() : null;

    private static JsonElement[] Items(JsonElement of, string key) =>
        of.TryGetProperty(key, out JsonElement list) && list.ValueKind == JsonValueKind.Array ? list.EnumerateArray().ToArray() : [];

    private static JsonProperty[] Members(JsonElement of, string key) =>
        of.TryGetProperty(key, out JsonElement members) && members.ValueKind == JsonValueKind.Object
            ? members.EnumerateObject().ToArray() : [];
}
