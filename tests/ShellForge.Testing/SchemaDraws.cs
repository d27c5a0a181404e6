using System.Globalization;
using System.Text.Json.Nodes;
using ShellForge.Board.Profiles;
using YamlDotNet.RepresentationModel;

namespace ShellForge.Testing;

/// <summary>
/// Draws values of a board file from its JSON Schema, so that a key which comes to the schema comes to the drawn boards by itself. Values
/// lie at both ends of their ranges and between; places lie on the board.
/// </summary>
/// <param name="dice">What is drawn from.</param>
/// <param name="reach">Farthest coordinate of a place, mm.</param>
/// <param name="refs">Designators on the board.</param>
public sealed class SchemaDraws(Random dice, double reach, string[] refs)
{
    // Places can be anywhere within this by the schema, mm; a pattern has no more than so many members.
    private const double AnyPlace = 2000;
    private const int MostMembers = 24;

    private int _named;

    /// <summary>Adds keys that a file does not say yet, wherever its form allows them.</summary>
    /// <param name="node">A node of the file.</param>
    /// <param name="schema">Its schema.</param>
    /// <param name="share">Share of the missing keys that are added.</param>
    public void Add(YamlNode node, JsonNode schema, double share)
    {
        if (node is YamlMappingNode mapping && Forms(schema).FirstOrDefault(form => form["properties"] is not null) is { } form)
        {
            foreach ((string key, JsonNode? sub) in (JsonObject)form["properties"]!)
            {
                YamlNode? present = mapping.Children.FirstOrDefault(pair => ((YamlScalarNode)pair.Key).Value == key).Value;
                if (present is not null)
                {
                    Add(present, sub!, share);
                }
                else if (dice.NextDouble() < share && Holds(form, [.. Keys(mapping), key]))
                {
                    mapping.Add(key, Draw(sub!, key));
                }
            }
        }
        else if (node is YamlSequenceNode sequence && Forms(schema).FirstOrDefault(form => form["items"] is not null) is { } list)
        {
            foreach (YamlNode item in sequence)
            {
                Add(item, list["items"]!, share);
            }

            if (list["items"]!["properties"] is not null && dice.NextDouble() < share)
            {
                sequence.Add(Draw(list["items"]!, ""));
            }
        }
    }

    /// <summary>Paths of all keys that a schema has, and with <c>=</c> the words that a key may have.</summary>
    public static IEnumerable<string> Paths(JsonNode schema, string at = "")
    {
        foreach (JsonObject form in Forms(schema))
        {
            foreach ((string key, JsonNode? sub) in form["properties"] as JsonObject ?? [])
            {
                yield return $"{at}.{key}";
                foreach (string path in Paths(sub!, $"{at}.{key}"))
                {
                    yield return path;
                }
            }

            foreach (string path in form["items"] is { } items ? Paths(items, at) : [])
            {
                yield return path;
            }

            foreach (JsonNode? word in form["enum"] as JsonArray ?? [])
            {
                yield return $"{at}={word}";
            }
        }
    }

    /// <summary>Paths of all keys that a file says, and with <c>=</c> its words.</summary>
    public static IEnumerable<string> Paths(YamlNode node, string at = "") => node switch
    {
        YamlMappingNode mapping => mapping.Children.SelectMany(pair =>
            Paths(pair.Value, $"{at}.{((YamlScalarNode)pair.Key).Value}").Prepend($"{at}.{((YamlScalarNode)pair.Key).Value}")),
        YamlSequenceNode sequence => sequence.SelectMany(item => Paths(item, at)),
        YamlScalarNode scalar => [$"{at}={scalar.Value}"],
        _ => [],
    };

    private static IEnumerable<string> Keys(YamlMappingNode mapping) => mapping.Children.Select(pair => ((YamlScalarNode)pair.Key).Value!);

    // What a value may look like: the branches of its schema that describe one.
    private static IEnumerable<JsonObject> Forms(JsonNode schema)
    {
        var at = (JsonObject)schema;
        JsonObject[] branches = [.. (at["anyOf"] as JsonArray ?? []).OfType<JsonObject>().Where(branch => !IsRequirement(branch))];
        return branches.Length == 0 ? [at] : branches.SelectMany(Forms);
    }

    private static bool IsRequirement(JsonObject branch) => branch["required"] is not null && branch["properties"] is null;

    // Whether a set of keys is one that a form allows.
    private static bool Holds(JsonObject form, string[] keys) =>
        (form["required"] as JsonArray ?? []).All(key => keys.Contains((string)key!))
        && (form["dependentRequired"] as JsonObject ?? []).All(need =>
            !keys.Contains(need.Key) || ((JsonArray)need.Value!).All(key => keys.Contains((string)key!)))
        && (form["oneOf"] is not JsonArray one || one.Count(branch => Holds((JsonObject)branch!, keys)) == 1)
        && (form["anyOf"] is not JsonArray any || any.Any(branch => Holds((JsonObject)branch!, keys)))
        && (form["allOf"] as JsonArray ?? []).All(branch => Holds((JsonObject)branch!, keys))
        && (form["not"] is not JsonObject not || !Holds(not, keys));

    private YamlNode Draw(JsonNode schema, string key)
    {
        JsonObject[] forms = [.. Forms(schema)];
        JsonObject form = forms[dice.Next(forms.Length)];
        return form["enum"] is JsonArray words ? new YamlScalarNode((string)words[dice.Next(words.Count)]!)
            : form["properties"] is not null ? Mapping(form)
            : form["prefixItems"] is JsonArray each ? Flow(each.Select(item => Draw(item!, key)))
            : form["items"] is { } item ? Flow(Enumerable.Range(0, Many(form)).Select(_ => Draw(item, key)))
            : form["type"] is JsonArray ? Text(form, key)
            : (string)form["type"]! switch
            {
                "boolean" => new YamlScalarNode(dice.Next(2) == 0 ? "true" : "false"),
                "integer" => new YamlScalarNode(Whole(form).ToString(CultureInfo.InvariantCulture)),
                "number" => new YamlScalarNode(Number(form).ToString("0.###", CultureInfo.InvariantCulture)),
                _ => new YamlScalarNode(Pick("3 mm", "0.1 in", "80 mil", ".5in")),
            };
    }

    // Three corners make no outline that crosses itself; of everything else one or two are enough.
    private int Many(JsonObject form) => Math.Max((int)(form["minItems"] ?? 1), (int)(form["minItems"] ?? 1) == 0 ? 1 : 0)
        + (form["items"]!["prefixItems"] is null ? dice.Next(2) : 0);

    private YamlMappingNode Mapping(JsonObject form)
    {
        var properties = (JsonObject)form["properties"]!;
        string[] all = [.. properties.Select(pair => pair.Key)];
        string[] keys = [];
        for (int tries = 0; tries < 200; tries++)
        {
            keys = [.. all.Where(key => dice.Next(3) == 0)];
            if (Holds(form, keys))
            {
                break;
            }
        }

        return new YamlMappingNode(keys.SelectMany(key => new[] { new YamlScalarNode(key), Draw(properties[key]!, key) }))
        {
            Style = YamlDotNet.Core.Events.MappingStyle.Flow,
        };
    }

    private static YamlSequenceNode Flow(IEnumerable<YamlNode> items) =>
        new(items) { Style = YamlDotNet.Core.Events.SequenceStyle.Flow };

    private YamlScalarNode Text(JsonObject form, string key)
    {
        string[]? names = Names((string?)form["$comment"]);
        string text = names is not null ? names[dice.Next(names.Length)]
            : key is "part" or "to" or "wall" or "floor" or "front" && refs.Length > 0 && dice.Next(4) > 0 ? refs[dice.Next(refs.Length)]
            : key == "ref" ? $"Z{++_named}"
            : key == "rule" ? Pick("nothing-below", "dots-show", "plug-meets-housing", "no such rule")
            : key == "to" ? "out"
            : Pick("A", "TIDE 3", "rev 2", "7");
        return new YamlScalarNode(text) { Style = YamlDotNet.Core.ScalarStyle.DoubleQuoted };
    }

    private static string[]? Names(string? comment)
    {
        ProfileLibrary shipped = WrittenBoard.Shipped;
        return comment switch
        {
            "the name of a battery" => [.. shipped.Batteries.Names],
            "the name of a filament" => [.. shipped.Filaments.Names],
            "the name of a package" => [.. shipped.Packages.Names],
            "the name of a printer" => [.. shipped.Printers.Names],
            "the name of a screw" => [.. shipped.Screws.Names],
            "the name of a supply" => [.. shipped.Supplies.Names],
            "the name of an LED package" => [.. shipped.Leds.Names],
            "the name of an insert" => [.. shipped.Inserts.Names],
            "the name of a set of coefficients of heat" => [.. shipped.Heat.Names],
            null => null,
            _ => throw new InvalidOperationException($"no names are known for {comment}"),
        };
    }

    private int Whole(JsonObject form)
    {
        int least = (int)(form["minimum"] ?? 0);
        int most = Math.Min((int)(form["maximum"] ?? MostMembers), least + MostMembers);
        return dice.Next(4) switch { 0 => least, 1 => most, _ => dice.Next(least, most + 1) };
    }

    private double Number(JsonObject form)
    {
        double least = (double)(form["minimum"] ?? 0);
        double most = (double)(form["maximum"] ?? 100);
        if (least <= -AnyPlace && most >= AnyPlace)
        {
            return reach * ((2 * dice.NextDouble()) - 1);
        }

        // Ranges are wide and most of what is sensible lies near their lower end.
        double share = dice.NextDouble();
        return dice.Next(6) switch { 0 => least, 1 => most, _ => least + ((most - least) * share * share * share) };
    }

    private string Pick(params string[] from) => from[dice.Next(from.Length)];
}
