using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ShellForge.Board.Json;
using ShellForge.Output.Page;

namespace ShellForge.Cli.Viewing;

/// <summary>What the page is told of a file that can't be used.</summary>
internal sealed record MistakesDocument(ImmutableArray<PageMistake> Diagnostics)
{
    public static byte[] Bytes(ImmutableArray<PageMistake> mistakes) =>
        JsonText.Bytes(new MistakesDocument(mistakes), MistakesContext.Default.MistakesDocument);
}

/// <summary>How it is written.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(MistakesDocument))]
internal sealed partial class MistakesContext : JsonSerializerContext;
