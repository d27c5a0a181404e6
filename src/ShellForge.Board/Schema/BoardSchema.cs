using System.Text;
using System.Text.Json;
using ShellForge.Board.Yaml.Forms;
using ShellForge.Board.Yaml.ProfileForms;

namespace ShellForge.Board.Schema;

/// <summary>JSON Schemas, draft 2020-12, for editors, written from the very declarations that the readers use.</summary>
/// <remarks>
/// An editor's schema cannot hold everything the reader does: ranges of lengths that carry a unit, names of profiles, and whatever
/// depends on geometry are checked by the reader alone.
/// </remarks>
public static class BoardSchema
{
    private const string Draft = "https://json-schema.org/draft/2020-12/schema";

    /// <summary>The schema of the board file.</summary>
    public static string Json() => Written("Board file", BoardFileForm.Form);

    /// <summary>The schema of profile files.</summary>
    public static string ProfilesJson() => Written("Profile file", ProfileFileForm.Form);

    /// <summary>The schema of a kind of file.</summary>
    internal static string Written(string title, ISchemaSource source)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
        {
            json.WriteStartObject();
            json.WriteString("$schema", Draft);
            json.WriteString("$comment", title);
            source.WriteSchema(new SchemaWriter(json));
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }
}
