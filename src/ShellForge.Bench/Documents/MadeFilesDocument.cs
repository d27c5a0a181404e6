using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ShellForge.Board.Json;
using ShellForge.Output.Files;

namespace ShellForge.Bench.Documents;

/// <summary>What there is to take from a housing.</summary>
/// <param name="Files">The files that <c>make</c> would write.</param>
internal sealed record MadeFilesDocument(ImmutableArray<MadeFileDocument> Files)
{
    public static byte[] Bytes(IEnumerable<OutputFile> files) => JsonText.Bytes(
        new MadeFilesDocument([.. files.Select(file => new MadeFileDocument(file.Name, file.Content.Length))]),
        MadeFilesContext.Default.MadeFilesDocument);
}

/// <summary>One of them.</summary>
internal sealed record MadeFileDocument(string Name, int Bytes);

/// <summary>How they are written.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(MadeFilesDocument))]
internal sealed partial class MadeFilesContext : JsonSerializerContext;
