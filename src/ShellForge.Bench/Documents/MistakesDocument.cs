using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ShellForge.Board.Json;
using ShellForge.Output.Page;

namespace ShellForge.Bench.Documents;

/// <summary>What the page is told of a file that can't be used.</summary>
/// <param name="Diagnostics">Its mistakes.</param>
/// <param name="IsBegun">Whether it is only begun and not there yet: no mistake at all.</param>
internal sealed record MistakesDocument(ImmutableArray<PageMistake> Diagnostics, bool IsBegun)
{
    public static byte[] Bytes(ImmutableArray<PageMistake> mistakes, bool isBegun) =>
        JsonText.Bytes(new MistakesDocument(mistakes, isBegun), MistakesContext.Default.MistakesDocument);
}

/// <summary>How it is written.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(MistakesDocument))]
internal sealed partial class MistakesContext : JsonSerializerContext;
