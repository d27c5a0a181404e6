using System.Collections.Immutable;
using System.ComponentModel;
using System.Text.Json.Serialization;
using ShellForge.Board.Json;

namespace ShellForge.Cli.Profiles;

/// <summary>What <c>profiles --json</c> prints.</summary>
internal sealed record ProfilesDocument(string Format, ImmutableArray<ProfileDocument> Profiles)
{
    /// <summary>What <c>format</c> says.</summary>
    public const string FormatName = "shellforge-profile-list/1";

    public static byte[] Bytes(IEnumerable<ProfileSheet> sheets) => JsonText.Bytes(
        new ProfilesDocument(FormatName, [.. sheets.Select(ProfileDocument.Of)]), ProfilesContext.Default.ProfilesDocument);

    public static string Schema() => DocumentSchema.Json(ProfilesContext.Default.ProfilesDocument, FormatName);
}

/// <summary>A profile.</summary>
internal sealed record ProfileDocument(
    [property: Description("Shelf, as in profile files.")] string Kind,
    string Name,
    [property: Description("Its values under the keys of profile files.")] OrderedDictionary<string, ProfileValueDocument> Values)
{
    public static ProfileDocument Of(ProfileSheet sheet) => new(
        sheet.Kind, sheet.Name,
        new(sheet.Lines.Select(line => KeyValuePair.Create(line.What, new ProfileValueDocument(line.Value, line.Source)))));
}

/// <summary>A value of a profile.</summary>
internal sealed record ProfileValueDocument(
    [property: Description("The value as text, with its unit.")] string Value,
    [property: Description("Where it comes from; empty where nothing needs a source.")] string Source);

/// <summary>How they are written.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower,
    GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(ProfilesDocument))]
internal sealed partial class ProfilesContext : JsonSerializerContext;
