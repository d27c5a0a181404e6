using System.Globalization;
using System.Text;
using System.Text.Json;

namespace ShellForge.Board.Schema;

/// <summary>
/// The reference of the board file for people: every key with what it takes and means, in Markdown, written from its schema.
/// </summary>
public static class BoardReference
{
    private const string Top = """
        # The board file, key by key
        A board file is YAML. Lengths are mm, or carry a unit: `0.5 in`, `40 mil`. Coordinates are those of the ECAD, seen from the LED
        side: x right, y up. Angles run counter-clockwise from +x: 0 is right, 90 is up. `shellforge new NAME` writes a file to start from.

        """;

    /// <summary>The text.</summary>
    public static string Text()
    {
        using var schema = JsonDocument.Parse(BoardSchema.Json());
        var text = new StringBuilder(Top.ReplaceLineEndings("\n"));
        Section(text, "", schema.RootElement);
        return text.ToString();
    }

    private static void Section(StringBuilder text, string path, JsonElement form)
    {
        text.Append(path.Length == 0 ? "\n## At the top\n" : $"\n## `{path}`\n").Append("| key | takes | means |\n| --- | --- | --- |\n");
        HashSet<string> needed = form.TryGetProperty("required", out JsonElement required)
            ? [.. required.EnumerateArray().Select(key => key.GetString()!)] : [];
        var deeper = new List<(string Path, JsonElement Form)>();
        foreach (JsonProperty key in form.GetProperty("properties").EnumerateObject())
        {
            string where = path.Length == 0 ? key.Name : $"{path}.{key.Name}";
            string means = key.Value.TryGetProperty("description", out JsonElement said) ? said.GetString()! : "";
            string must = needed.Contains(key.Name) ? " Must be given." : "";
            text.Append(CultureInfo.InvariantCulture,
                $"| `{key.Name}` | {Cell(Takes(key.Value, where))} | {Cell(means)}{must} |\n");
            deeper.AddRange(Forms(key.Value, where));
        }

        foreach ((string where, JsonElement inner) in deeper)
        {
            Section(text, where, inner);
        }
    }

    private static string Cell(string text) => text.Replace("|", "\\|", StringComparison.Ordinal);

    // Every form with keys of its own that a value may have.
    private static IEnumerable<(string Path, JsonElement Form)> Forms(JsonElement value, string path)
    {
        if (value.TryGetProperty("properties", out _))
        {
            return [(path, value)];
        }

        if (value.TryGetProperty("anyOf", out JsonElement choices))
        {
            return Choices(choices).SelectMany(choice => Forms(choice, path));
        }

        return Item(value) is { } item ? Forms(item, path + "[]") : [];
    }

    private static JsonElement? Item(JsonElement value) =>
        value.TryGetProperty("items", out JsonElement item) && item.ValueKind == JsonValueKind.Object ? item : null;

    // What may stand alone or as a list of the same is told once, as the list.
    private static JsonElement[] Choices(JsonElement choices)
    {
        JsonElement[] all = [.. choices.EnumerateArray()];
        JsonElement[] listed = [.. all.Select(Item).OfType<JsonElement>()];
        return [.. all.Where(choice => !listed.Any(item => JsonElement.DeepEquals(item, choice)))];
    }

    private static string Takes(JsonElement value, string path)
    {
        if (value.TryGetProperty("enum", out JsonElement words))
        {
            return string.Join(", ", words.EnumerateArray().Select(word => $"`{word}`"));
        }

        if (value.TryGetProperty("anyOf", out JsonElement choices))
        {
            JsonElement[] all = Choices(choices);
            if (all.Length < choices.GetArrayLength())
            {
                return $"one or a {Takes(all[0], path)}";
            }

            bool isLength = all.Length == 2 && Type(all[0]) == "number" && IsWithUnit(all[1]);
            return isLength ? Range(all[0]) + " mm" : string.Join(", or ", all.Select(choice => Takes(choice, path)).Distinct());
        }

        if (value.TryGetProperty("properties", out _))
        {
            return $"see `{path}`";
        }

        return Type(value) switch
        {
            "array" when value.TryGetProperty("prefixItems", out JsonElement items) =>
                $"[{string.Join(", ", items.EnumerateArray().Select(item => Takes(item, path)))}]",
            "array" when Item(value) is { } item =>
                (item.TryGetProperty("properties", out _) ? "list: " : Type(item) is "number" or "integer" ? "list of numbers, each "
                    : "list of ") + Takes(item, path + "[]"),
            "array" => "list of values",
            "number" or "integer" => Range(value),
            "boolean" => "`true`, `false`",
            _ => value.TryGetProperty("$comment", out JsonElement comment) ? comment.GetString()! : "text",
        };
    }

    private static string Type(JsonElement value) =>
        value.TryGetProperty("type", out JsonElement type) && type.ValueKind == JsonValueKind.String ? type.GetString()! : "";

    private static bool IsWithUnit(JsonElement value) =>
        value.TryGetProperty("pattern", out JsonElement pattern) && pattern.GetString()!.Contains("mil", StringComparison.Ordinal);

    private static string Range(JsonElement value) =>
        value.TryGetProperty("minimum", out JsonElement least) && value.TryGetProperty("maximum", out JsonElement most)
            ? $"{least} to {most}"
            : "a number";
}
