using System.Collections.Immutable;
using System.ComponentModel;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using ShellForge.Board.Files;
using ShellForge.Board.Json;
using ShellForge.Sweep.Folder;
using ShellForge.Sweep.Rows;

namespace ShellForge.Sweep.Index;

/// <summary>The index for machines.</summary>
/// <param name="Format">Name and version of the format.</param>
/// <param name="Variants">The variants, in the plan's order.</param>
/// <param name="Shopping">What to have at hand for all of them, with spares.</param>
/// <param name="Plates">What can be printed together.</param>
public sealed record IndexDocument(
    string Format,
    [property: Description("In the order of the plan; what every variant resolves to stands in its own "
        + "report.")] ImmutableArray<VariantRow> Variants,
    [property: Description("For one of each variant that can be printed.")] ImmutableArray<BatchItem> Shopping,
    [property: Description("Plates that hold parts of one printer and one set of filaments together.")] ImmutableArray<BatchPlate> Plates);

/// <summary>Writes the index for machines, one variant after the other.</summary>
public static class IndexJson
{
    /// <summary>What <c>format</c> says.</summary>
    public const string Format = "shellforge-sweep-index/1";

    /// <summary>The schema of the document.</summary>
    public static string Schema() => DocumentSchema.Json(IndexContext.Default.IndexDocument, Format);

    /// <summary>Whether a file begins as such a document does, of this version or another.</summary>
    internal static bool IsOurs(string path)
    {
        const int looked = 200;
        byte[] start = new byte[looked];
        using Stream file = BoundedFile.Open(path);
        int read = file.ReadAtLeast(start, looked, throwOnEndOfStream: false);
        return Encoding.UTF8.GetString(start.AsSpan(0, read)).Contains(FormatName.OfAnyVersion(Format), StringComparison.Ordinal);
    }

    internal static void Write(Stream stream, SweepFolder folder, Batch batch, ImmutableArray<BatchPlate> plates)
    {
        using var json = new Utf8JsonWriter(stream,
            new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping });
        json.WriteStartObject();
        json.WriteString("format", Format);
        json.WriteStartArray("variants");
        foreach (VariantRow row in folder.Rows())
        {
            JsonSerializer.Serialize(json, row with { Housing = row.Housing is null ? null : row.Housing with { Resolved = [] } },
                IndexContext.Default.VariantRow);
            json.Flush();
        }

        json.WriteEndArray();
        json.WritePropertyName("shopping");
        JsonSerializer.Serialize(json, batch.Shopping, IndexContext.Default.ImmutableArrayBatchItem);
        json.WritePropertyName("plates");
        JsonSerializer.Serialize(json, plates, IndexContext.Default.ImmutableArrayBatchPlate);
        json.WriteEndObject();
        json.Flush();
        stream.WriteByte((byte)'\n');
    }
}

/// <summary>How it is written.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower,
    GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(IndexDocument))]
internal sealed partial class IndexContext : JsonSerializerContext;
