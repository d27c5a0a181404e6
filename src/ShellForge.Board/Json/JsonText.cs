using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;

namespace ShellForge.Board.Json;

/// <summary>How all JSON of the program is written: UTF-8, line feeds, letters as they are. The same value gives the same bytes.</summary>
public static class JsonText
{
    /// <summary>A document with a line for each value, ended by a line feed.</summary>
    public static byte[] Bytes<T>(T value, JsonTypeInfo<T> type) => Written(value, type, Style);

    /// <summary>A document on one line.</summary>
    public static byte[] Packed<T>(T value, JsonTypeInfo<T> type) => Written(value, type, Style with { Indented = false });

    /// <summary>A document on one line that may stand within a page: no character of it means anything there.</summary>
    public static byte[] InPage<T>(T value, JsonTypeInfo<T> type) =>
        Written(value, type, new JsonWriterOptions { Encoder = JavaScriptEncoder.Default });

    // Degree signs and other letters stay readable; these files are never pasted into a page.
    private static JsonWriterOptions Style { get; } = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private static byte[] Written<T>(T value, JsonTypeInfo<T> type, JsonWriterOptions style)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, style))
        {
            JsonSerializer.Serialize(json, value, type);
        }

        if (style.Indented)
        {
            stream.WriteByte((byte)'\n');
        }

        return stream.ToArray();
    }
}
