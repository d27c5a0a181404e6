using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;

namespace ShellForge.Testing;

/// <summary>Judges values by a JSON Schema, with a library that shares nothing with what wrote the schema.</summary>
public sealed class SchemaJudge(string schema)
{
    private static readonly EvaluationOptions Whole = new() { OutputFormat = OutputFormat.List };

    private readonly JsonSchema _schema = JsonSchema.FromText(schema, new BuildOptions { SchemaRegistry = new SchemaRegistry() });

    /// <summary>Whether a schema is one by the draft that it names.</summary>
    public static bool IsSchema(string schema) => MetaSchemas.Draft202012.Evaluate(JsonDocument.Parse(schema).RootElement, Whole).IsValid;

    /// <summary>Whether a value is as the schema wants it.</summary>
    public bool Accepts(JsonNode? value) => Faults(value) is [];

    /// <summary>What is wrong with a value, each with its place; empty when nothing is.</summary>
    public IReadOnlyList<string> Faults(JsonNode? value)
    {
        EvaluationResults results = _schema.Evaluate(JsonSerializer.SerializeToElement(value), Whole);
        return results.IsValid
            ? []
            : [.. results.Details!.Where(d => !d.IsValid && d.Errors is not null)
                .SelectMany(d => d.Errors!.Select(e => $"{d.InstanceLocation}: {e.Value}")).DefaultIfEmpty("refused")];
    }
}
