using System.ComponentModel;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.Json.Schema;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;

namespace ShellForge.Board.Json;

/// <summary>
/// JSON Schemas, draft 2020-12, of the documents that the program writes, from the very records that are written. Objects stay open: a
/// later program of the same version of the format may say more.
/// </summary>
public static class DocumentSchema
{
    /// <summary>The draft that all schemas of the program are written in.</summary>
    public const string Draft = "https://json-schema.org/draft/2020-12/schema";

    private const string FormatKey = "format";

    /// <summary>The schema of a document.</summary>
    /// <param name="type">The record that is written.</param>
    /// <param name="format">Name and version of its format, which the document names.</param>
    /// <param name="own">Schemas of types that are written by a converter of their own.</param>
    public static string Json(JsonTypeInfo type, string format, IReadOnlyDictionary<Type, JsonObject>? own = null)
    {
        var options = new JsonSchemaExporterOptions
        {
            TreatNullObliviousAsNonNullable = true,
            TransformSchemaNode = (context, node) => Described(context, node, own),
        };
        var body = (JsonObject)type.GetJsonSchemaAsNode(options);
        var schema = new JsonObject { ["$schema"] = Draft, ["title"] = format };
        foreach ((string key, JsonNode? value) in body.ToArray())
        {
            body.Remove(key);
            schema[key] = value;
        }

        schema["properties"]![FormatKey] = new JsonObject { ["description"] = "Name and version of this format.", ["const"] = format };
        return Encoding.UTF8.GetString(JsonText.Bytes(schema, SchemaContext.Default.JsonObject));
    }

    private static JsonObject Described(JsonSchemaExporterContext context, JsonNode node, IReadOnlyDictionary<Type, JsonObject>? own)
    {
        Type type = context.TypeInfo.Type;
        JsonObject schema = Known(Nullable.GetUnderlyingType(type) ?? type, own) ?? node as JsonObject ?? [];
        if (!ReferenceEquals(schema, node) && Nullable.GetUnderlyingType(type) is not null)
        {
            schema["type"] = new JsonArray(schema["type"]!.DeepClone(), "null");
        }

        if (context.TypeInfo.Kind == JsonTypeInfoKind.Object)
        {
            // What is only left out when there is nothing to say; all else always stands there.
            schema["required"] =
                new JsonArray(
                    [.. context.TypeInfo.Properties.Where(p => p.Get is not null && !MayBeLeftOut(p)).Select(p => (JsonNode)p.Name)]);
        }

        if (context.PropertyInfo?.AttributeProvider?.GetCustomAttributes(typeof(DescriptionAttribute),
            inherit: true) is [DescriptionAttribute about])
        {
            schema.Insert(0, "description", about.Description);
        }

        return schema;
    }

    private static bool MayBeLeftOut(JsonPropertyInfo property) =>
        property.AttributeProvider?.IsDefined(typeof(JsonIgnoreAttribute), inherit: true) ?? false;

    private static JsonObject? Known(Type type, IReadOnlyDictionary<Type, JsonObject>? own) =>
        type == typeof(double) ? new JsonObject { ["type"] = "number" }
        : own is not null && own.TryGetValue(type, out JsonObject? schema) ? (JsonObject)schema.DeepClone()
        : null;
}

/// <summary>Writes schemas.</summary>
[JsonSerializable(typeof(JsonObject))]
internal sealed partial class SchemaContext : JsonSerializerContext;
