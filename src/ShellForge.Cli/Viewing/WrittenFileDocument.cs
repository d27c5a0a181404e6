using System.Text.Json.Serialization;
using ShellForge.Board.Json;

namespace ShellForge.Cli.Viewing;

/// <summary>What the page is told of the board file.</summary>
/// <param name="Text">Its text; null when it is gone.</param>
/// <param name="Stamp">Tells one text from another.</param>
internal sealed record WrittenFileDocument(string? Text, string Stamp)
{
    public byte[] Bytes() => JsonText.Bytes(this, WrittenFileContext.Default.WrittenFileDocument);
}

/// <summary>How it is written.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(WrittenFileDocument))]
internal sealed partial class WrittenFileContext : JsonSerializerContext;
