using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using YamlDotNet.RepresentationModel;

namespace ShellForge.Testing;

/// <summary>
/// Files in YAML, spoiled in their structure (values and keys that change places, go, come twice, or become others that the schema knows),
/// in their bytes, or in both.
/// </summary>
/// <param name="dice">What changes are drawn from.</param>
/// <param name="words">Keys and words of the files' schema.</param>
public sealed class SpoiledYaml(Random dice, string[] words)
{
    private static readonly string[] Values =
    [
        "", "~", "null", "true", "none", "auto", "0", "-0", "-1", "1e308", "-1e308", "1e-320", "1e999", ".nan", "-.inf", "0x10",
        "999999999", "99999999999999999999", "3 mm", "0.1 in", "1e9 mil", "1 furlong", "\u0000", "\u001b[2J", "\u202e", "\ufeff",
        "../../x", "/etc/passwd", "*", "?*", "{x}", "{", "a=b", "[0]", "..", ".",
    ];

    private static readonly string[] Pieces =
    [
        "{", "}", "[", "]", ": ", "- ", "\n", "\n  ", "\t", "#", "&a ", "*a", "!!", "!<x> ", "\"", "'", "|\n", ">\n", "? ", ", ", "---\n",
        "...\n", "%YAML 9\n", "<<: *a", "\u0000", "\uFEFF", "\uD800", "\u2028", "\r", "[[[[[[[[[[[[[[[[", "{{{{{{{{{{{{{{{{",
    ];

    /// <summary>Keys and words that a schema knows.</summary>
    public static string[] WordsOf(string schema) =>
        [.. SchemaDraws.Paths(JsonNode.Parse(schema)!).Select(path => path[(path.LastIndexOfAny(['.', '=']) + 1)..]).Distinct()];

    /// <summary>A spoiled file.</summary>
    public string Of(string text)
    {
        // Half of them keep their grammar, a sixth their structure until bytes go astray; the others neither.
        int kind = dice.Next(6);
        string spoiled = kind == 3 ? text : InStructure(text);
        return kind < 3 ? spoiled : InBytes(spoiled);
    }

    private string InStructure(string text)
    {
        var stream = new YamlStream();
        stream.Load(new StringReader(text));
        for (int edits = dice.Next(2) == 0 ? 1 : dice.Next(2, 5); edits > 0; edits--)
        {
            YamlNode[] all = [.. stream.Documents[0].AllNodes.Distinct()];
            YamlNode at = all[dice.Next(all.Length)];
            YamlNode other = dice.Next(3) == 0 ? Copy(all[dice.Next(all.Length)]) : new YamlScalarNode(Word());
            switch (at)
            {
                case YamlMappingNode mapping when mapping.Children.Count > 0:
                    Spoil(mapping, other);
                    break;
                case YamlSequenceNode list:
                    Spoil(list, other);
                    break;
                case YamlScalarNode scalar:
                    scalar.Value = dice.Next(2) == 0 ? Digits(scalar.Value ?? "")
                        : dice.Next(2) == 0 ? all.OfType<YamlScalarNode>().ElementAt(dice.Next(all.OfType<YamlScalarNode>().Count())).Value
                        : Word();
                    break;
            }
        }

        var written = new StringWriter(CultureInfo.InvariantCulture);
        stream.Save(written, assignAnchors: true);
        return written.ToString();
    }

    private void Spoil(YamlMappingNode mapping, YamlNode other)
    {
        (YamlNode key, YamlNode value) = mapping.Children.ElementAt(dice.Next(mapping.Children.Count));
        switch (dice.Next(5))
        {
            case 0:
                mapping.Children.Remove(key);
                break;
            case 1:
                mapping.Children[key] = other;
                break;
            case 2:
                mapping.Children[new YamlScalarNode(Word())] = Copy(value);
                break;
            case 3:
                mapping.Children[key] = new YamlSequenceNode(Enumerable.Repeat(value, dice.Next(0, 4)).Select(Copy));
                break;
            default:
                // The same value twice is written with an anchor and an alias.
                mapping.Children[new YamlScalarNode(Word())] = value;
                break;
        }
    }

    private void Spoil(YamlSequenceNode list, YamlNode other)
    {
        int at = dice.Next(list.Children.Count + 1);
        switch (dice.Next(3))
        {
            case 0 when at < list.Children.Count:
                list.Children.RemoveAt(at);
                break;
            case 1 when at < list.Children.Count:
                list.Children[at] = other;
                break;
            default:
                for (int times = dice.Next(4) == 0 ? 400 : 1; times > 0; times--)
                {
                    list.Children.Insert(at, Copy(other));
                }

                break;
        }
    }

    private string InBytes(string text)
    {
        var spoiled = new StringBuilder(text);
        for (int edits = dice.Next(1, 4); edits > 0; edits--)
        {
            int at = dice.Next(spoiled.Length + 1);
            int length = Math.Min(dice.Next(1, 60), spoiled.Length - at);
            string piece = dice.Next(5) switch
            {
                0 => Pieces[dice.Next(Pieces.Length)],
                1 => ((char)dice.Next(1, 0x180)).ToString(),
                2 => spoiled.ToString(at, length),
                3 => Word(),
                _ => "",
            };
            spoiled.Remove(at, dice.Next(2) == 0 ? 0 : Math.Min(dice.Next(1, 12), length));
            spoiled.Insert(dice.Next(3) == 0 ? dice.Next(spoiled.Length + 1) : Math.Min(at, spoiled.Length), piece);
        }

        return spoiled.ToString();
    }

    private string Word() => dice.Next(2) == 0 ? Values[dice.Next(Values.Length)] : words[dice.Next(words.Length)];

    private string Digits(string text) => string.Concat(text.Select(c =>
        char.IsAsciiDigit(c) && dice.Next(3) == 0 ? (char)('0' + dice.Next(10)) : c == '.' && dice.Next(4) == 0 ? '9' : c));

    private static YamlNode Copy(YamlNode node)
    {
        switch (node)
        {
            case YamlMappingNode mapping:
                var copy = new YamlMappingNode();
                foreach ((YamlNode key, YamlNode value) in mapping.Children)
                {
                    // Keys that were spoiled may be alike by now.
                    copy.Children[Copy(key)] = Copy(value);
                }

                return copy;
            case YamlSequenceNode list:
                return new YamlSequenceNode(list.Children.Select(Copy));
            default:
                return new YamlScalarNode(((YamlScalarNode)node).Value) { Style = ((YamlScalarNode)node).Style };
        }
    }
}
