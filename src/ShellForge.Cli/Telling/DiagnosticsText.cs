using System.Text.Json;
using ShellForge.Board.Diagnostics;

namespace ShellForge.Cli.Telling;

/// <summary>Diagnostics for people and for machines.</summary>
internal static class DiagnosticsText
{
    /// <summary>One line each on the error writer, as editors and compilers know them.</summary>
    public static void Write(IEnumerable<Diagnostic> diagnostics, Workbench bench, bool errorsOnly)
    {
        foreach (Diagnostic diagnostic in diagnostics.Where(d => d.IsError || !errorsOnly))
        {
            bench.Err.WriteLine(diagnostic.ToString());
        }
    }

    /// <summary>An array property of the object being written.</summary>
    public static void WriteJson(Utf8JsonWriter json, IEnumerable<Diagnostic> diagnostics)
    {
        json.WriteStartArray("diagnostics");
        foreach (Diagnostic diagnostic in diagnostics)
        {
            json.WriteStartObject();
            json.WriteString("file", diagnostic.File);
            json.WriteNumber("line", diagnostic.Line);
            json.WriteNumber("column", diagnostic.Column);
            json.WriteString("code", diagnostic.Code);
            json.WriteString("severity", diagnostic.Severity switch
            {
                DiagnosticSeverity.Error => "error",
                DiagnosticSeverity.Warning => "warning",
                _ => "note",
            });
            json.WriteString("message", diagnostic.Message);
            WriteOptional(json, "expected", diagnostic.Expected);
            WriteOptional(json, "nearest", diagnostic.Nearest);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteOptional(Utf8JsonWriter json, string name, string? value)
    {
        if (value is not null)
        {
            json.WriteString(name, value);
        }
    }
}
