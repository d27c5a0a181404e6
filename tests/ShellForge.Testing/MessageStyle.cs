using System.Text.Json;
using System.Text.RegularExpressions;

namespace ShellForge.Testing;

/// <summary>
/// What can be counted of a message's style: its length, its units, that it says a number once, that the keys of its remedy exist.
/// </summary>
public static partial class MessageStyle
{
    private const int LongestMessage = 160;
    private const int LongestRemedy = 260;

    private static readonly Lazy<HashSet<string>> Keys = new(KeysOfFiles);

    /// <summary>Everything that is wrong with a finding's words; nothing when they are well.</summary>
    /// <param name="message">What is the matter.</param>
    /// <param name="remedy">What to do.</param>
    public static IEnumerable<string> Faults(string message, string remedy)
    {
        string all = $"{message} {remedy}";
        if (message.Length > LongestMessage)
        {
            yield return $"{message.Length} characters: {message}";
        }

        if (remedy.Length is 0 or > LongestRemedy)
        {
            yield return $"a remedy of {remedy.Length} characters: {remedy}";
        }

        foreach (string word in new[] { "degC", " mm2", " mm3", "are wanted", "is told", "NaN", "\u221e" }.Where(
            word => all.Contains(word, StringComparison.Ordinal)))
        {
            yield return $"it says '{word}': {all}";
        }

        foreach (IGrouping<string, string> twice in Measures().Matches(message).Select(match => match.Value).GroupBy(value => value,
            StringComparer.Ordinal).Where(same => same.Count() > 1))
        {
            yield return $"it says {twice.Key} twice: {message}";
        }

        foreach (string key in Quoted().Matches(remedy).SelectMany(match => Names().Matches(match.Groups[1].Value))
            .Select(match => match.Groups[1].Value).Where(key => !Keys.Value.Contains(key)))
        {
            yield return $"no file has the key '{key}': {remedy}";
        }
    }

    // The keys of the board file's schema and of profile files.
    private static HashSet<string> KeysOfFiles()
    {
        var keys = new HashSet<string>(StringComparer.Ordinal);
        using JsonDocument schema = JsonDocument.Parse(File.ReadAllText(Repository.At("tests", "golden", "schema", "board.json")));
        Collect(schema.RootElement, keys);
        foreach (string path in Directory.EnumerateFiles(Repository.At("profiles"), "*.yaml", SearchOption.AllDirectories))
        {
            keys.UnionWith(Names().Matches(File.ReadAllText(path)).Select(match => match.Groups[1].Value));
        }

        return keys;
    }

    private static void Collect(JsonElement element, HashSet<string> keys)
    {
        switch (element.ValueKind)
        {
            case JsonValueKind.Object:
                foreach (JsonProperty property in element.EnumerateObject())
                {
                    if (property.Name == "properties" && property.Value.ValueKind == JsonValueKind.Object)
                    {
                        keys.UnionWith(property.Value.EnumerateObject().Select(each => each.Name));
                    }

                    Collect(property.Value, keys);
                }

                break;
            case JsonValueKind.Array:
                foreach (JsonElement item in element.EnumerateArray())
                {
                    Collect(item, keys);
                }

                break;
        }
    }

    [GeneratedRegex("""'([a-z][^']*)'""")]
    private static partial Regex Quoted();

    // "key:" within a quoted piece of a file.
    [GeneratedRegex("""([a-z][a-z0-9-]*):(?=[ }]|$)""", RegexOptions.Multiline)]
    private static partial Regex Names();

    // A number of two digits or more with its unit.
    [GeneratedRegex("""\b\d+\.\d+ (?:mm|V|A|g|N)\b""")]
    private static partial Regex Measures();
}
