using System.Text;
using System.Text.Json;
using ShellForge.Output.Report;

namespace ShellForge.Cli.Telling;

/// <summary>Writes one JSON object as the whole result of a command.</summary>
internal static class JsonOut
{
    public static void Write(Workbench bench, Action<Utf8JsonWriter> members)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, ReportJson.Options))
        {
            json.WriteStartObject();
            members(json);
            json.WriteEndObject();
        }

        bench.Out.Write(Encoding.UTF8.GetString(stream.GetBuffer(), 0, (int)stream.Length));
        bench.Out.Write('\n');
    }
}
