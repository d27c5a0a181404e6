using System.Collections.Immutable;
using System.Text;
using System.Text.Json.Nodes;
using ShellForge.Board.Diagnostics;
using ShellForge.Board.Json;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Import.Writing;

/// <summary>
/// The import as JSON, in millimetres and file coordinates:
/// <c>{format, files, outline, holes, slots, parts: {top, bottom, skipped, rows}, thickness_mm, diagnostics}</c>. The numbers top and
/// bottom count all rows placed on that side; skipped lists the rows that are no parts, with the reason.
/// </summary>
public static class ImportJson
{
    /// <summary>What <c>format</c> says.</summary>
    public const string Format = "shellforge-import/1";

    /// <summary>The JSON text, indented, ended by a line feed.</summary>
    public static string Text(ImportResult result) => Text(result, result.Diagnostics);

    /// <summary>The JSON text with diagnostics of more than the import itself, such as files that could not be read.</summary>
    public static string Text(ImportResult result, ImmutableArray<Diagnostic> diagnostics) =>
        Encoding.UTF8.GetString(JsonText.Bytes(ImportDocument.Of(result.Board, diagnostics), ImportContext.Default.ImportDocument));

    /// <summary>The JSON Schema of it.</summary>
    public static string Schema() => DocumentSchema.Json(ImportContext.Default.ImportDocument, Format, Pairs);

    private static Dictionary<Type, JsonObject> Pairs { get; } = new()
    {
        [typeof(Point2)] = Numbers(2),
        [typeof(Box2)] = Numbers(4),
    };

    private static JsonObject Numbers(int count) => new()
    {
        ["type"] = "array",
        ["items"] = new JsonObject { ["type"] = "number" },
        ["minItems"] = count,
        ["maxItems"] = count,
    };
}
