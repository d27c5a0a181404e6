using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ShellForge.Board.Json;
using ShellForge.Board.Profiles;

namespace ShellForge.Bench.Documents;

/// <summary>The names of profiles that can stand in the board file.</summary>
/// <param name="Names">By kind, in the words of the schema: "an insert".</param>
internal sealed record NamesDocument(ImmutableDictionary<string, ImmutableArray<string>> Names)
{
    public static byte[] Bytes(ProfileLibrary profiles) => JsonText.Bytes(
        new NamesDocument(profiles.Kinds.ToImmutableDictionary(each => each.Kind, each => each.Names)), NamesContext.Default.NamesDocument);
}

/// <summary>How it is written.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(NamesDocument))]
internal sealed partial class NamesContext : JsonSerializerContext;
