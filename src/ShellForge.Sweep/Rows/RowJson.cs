using System.Text.Json;
using System.Text.Json.Serialization;
using ShellForge.Board.Json;

namespace ShellForge.Sweep.Rows;

/// <summary>Rows as JSON, one line each.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(VariantRow))]
internal sealed partial class RowJson : JsonSerializerContext
{
    /// <summary>A row as one line without its end.</summary>
    public static byte[] Line(VariantRow row) => JsonText.Packed(row, Default.VariantRow);

    /// <summary>The row of a line; null when it is none that a sweep can have written.</summary>
    public static VariantRow? Read(ReadOnlySpan<byte> line)
    {
        try
        {
            return JsonSerializer.Deserialize(line, Default.VariantRow) is { } row && SoundRow.Is(row) ? row : null;
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException or FormatException)
        {
            // Not JSON, of another shape, or with halves of signs.
            return null;
        }
    }
}
