using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace ShellForge.Board.Tests;

/// <summary>
/// A small validator of JSON Schema draft 2020-12, for the keywords that our schema uses. It shares no code with the reader. A keyword
/// that it does not know fails the test, so that nothing is passed over.
/// </summary>
internal static class JsonSchemaCheck
{
    private static readonly HashSet<string> Notes = ["$schema", "$comment", "title", "description"];

    public static bool Accepts(JsonNode schema, JsonNode? value)
    {
        foreach ((string keyword, JsonNode? rule) in schema.AsObject())
        {
            if (!Notes.Contains(keyword) && !Holds(keyword, rule!, schema.AsObject(), value))
            {
                return false;
            }
        }

        return true;
    }

    private static bool Holds(string keyword, JsonNode rule, JsonObject schema, JsonNode? value) => keyword switch
    {
        "type" => rule is JsonArray types ? types.Any(t => HasType(value, (string)t!)) : HasType(value, (string)rule!),
        "enum" => rule.AsArray().Any(word => JsonNode.DeepEquals(word, value)),
        "minimum" => Number(value) is not { } n || n >= (double)rule,
        "maximum" => Number(value) is not { } n || n <= (double)rule,
        "minLength" => Text(value) is not { } t || t.Length >= (int)rule,
        "maxLength" => Text(value) is not { } t || t.Length <= (int)rule,
        "pattern" => Text(value) is not { } t || Regex.IsMatch(t, (string)rule!, RegexOptions.CultureInvariant),
        "items" => value is not JsonArray list || list.Skip(schema["prefixItems"]?.AsArray().Count ?? 0).All(i => Accepts(rule, i)),
        "prefixItems" => value is not JsonArray list || list.Zip(rule.AsArray()).All(p => Accepts(p.Second!, p.First)),
        "minItems" => value is not JsonArray list || list.Count >= (int)rule,
        "maxItems" => value is not JsonArray list || list.Count <= (int)rule,
        "properties" => value is not JsonObject map || map.All(p => rule[p.Key] is not { } own || Accepts(own, p.Value)),
        "additionalProperties" => value is not JsonObject map || map.All(p =>
            schema["properties"]?[p.Key] is not null || (rule is JsonObject any ? Accepts(any, p.Value) : (bool)rule)),
        "maxProperties" => value is not JsonObject map || map.Count <= (int)rule,
        "required" => value is not JsonObject map || rule.AsArray().All(k => map.ContainsKey((string)k!)),
        "dependentRequired" => value is not JsonObject map || rule.AsObject().All(d =>
            !map.ContainsKey(d.Key) || d.Value!.AsArray().All(k => map.ContainsKey((string)k!))),
        "anyOf" => rule.AsArray().Any(s => Accepts(s!, value)),
        "oneOf" => rule.AsArray().Count(s => Accepts(s!, value)) == 1,
        "allOf" => rule.AsArray().All(s => Accepts(s!, value)),
        "not" => !Accepts(rule, value),
        _ => throw new NotSupportedException($"The keyword {keyword} is not known to this check."),
    };

    private static bool HasType(JsonNode? value, string type) => type switch
    {
        "object" => value is JsonObject,
        "array" => value is JsonArray,
        "string" => Text(value) is not null,
        "number" => Number(value) is not null,
        "integer" => Number(value) is { } n && n == Math.Floor(n),
        "boolean" => value is JsonValue b && b.TryGetValue(out bool _),
        _ => throw new NotSupportedException(type),
    };

    private static double? Number(JsonNode? value) => value is JsonValue v && v.TryGetValue(out double n) ? n : null;

    private static string? Text(JsonNode? value) => value is JsonValue v && v.TryGetValue(out string? t) ? t : null;
}
