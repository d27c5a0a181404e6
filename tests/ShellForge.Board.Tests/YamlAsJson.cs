using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using YamlDotNet.RepresentationModel;

namespace ShellForge.Board.Tests;

/// <summary>What an editor sees of a YAML file: scalars by YAML's core schema.</summary>
internal static partial class YamlAsJson
{
    public static JsonNode? Of(string yaml)
    {
        var stream = new YamlStream();
        stream.Load(new StringReader(yaml));
        return Of(stream.Documents[0].RootNode);
    }

    private static JsonNode? Of(YamlNode node) => node switch
    {
        YamlMappingNode map => new JsonObject(map.Children.Select(c => KeyValuePair.Create(((YamlScalarNode)c.Key).Value!, Of(c.Value)))),
        YamlSequenceNode list => new JsonArray([.. list.Children.Select(Of)]),
        YamlScalarNode scalar => Scalar(scalar),
        _ => throw new NotSupportedException(),
    };

    private static JsonValue? Scalar(YamlScalarNode scalar)
    {
        string text = scalar.Value ?? "";
        return scalar.Style != YamlDotNet.Core.ScalarStyle.Plain ? JsonValue.Create(text)
            : text is "" or "~" or "null" or "Null" or "NULL" ? null
            : text is "true" or "false" ? JsonValue.Create(text == "true")
            : CoreNumber().IsMatch(text) ? JsonValue.Create(double.Parse(text, CultureInfo.InvariantCulture))
            : JsonValue.Create(text);
    }

    [GeneratedRegex(@"^[-+]?(\.[0-9]+|[0-9]+(\.[0-9]*)?)([eE][-+]?[0-9]+)?$")]
    private static partial Regex CoreNumber();
}
