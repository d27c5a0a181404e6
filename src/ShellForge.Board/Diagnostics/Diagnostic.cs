using System.ComponentModel;
using System.Globalization;
using System.Text.Json.Serialization;
using ShellForge.Board.Json;

namespace ShellForge.Board.Diagnostics;

/// <summary>How much a diagnostic stops.</summary>
public enum DiagnosticSeverity
{
    /// <summary>Told for information: what was read from where, what was set aside.</summary>
    Note,

    /// <summary>The result holds, but a person should look.</summary>
    Warning,

    /// <summary>The input can't be used; nothing is written.</summary>
    Error,
}

/// <summary>Something about the input, with its place in a file. What is wrong with the product is a finding, not a diagnostic.</summary>
/// <param name="File">Name of the file as the user gave it.</param>
/// <param name="Line">Line, from 1; 0 when the whole file is meant.</param>
/// <param name="Column">Column in characters, from 1; 0 when the whole line is meant.</param>
/// <param name="Code">Stable short code in kebab case, for scripts.</param>
/// <param name="Severity">Whether it stops the work.</param>
/// <param name="Message">What is wrong, in one sentence.</param>
/// <param name="Expected">What was expected there or what to do; null when the message says it all.</param>
/// <param name="Nearest">The nearest valid name; null when none is near.</param>
public sealed record Diagnostic(
    [property: Description("Name of the file as it was given.")] string File,
    [property: Description("Line, from 1; 0 when the whole file is meant.")] int Line,
    [property: Description("Column in characters, from 1; 0 when the whole line is meant.")] int Column,
    [property: Description("Stable short code.")] string Code,
    [property: JsonConverter(typeof(KebabWords<DiagnosticSeverity>)), Description("An error stops the work.")] DiagnosticSeverity Severity,
    [property: Description("What is wrong.")] string Message,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull), Description("What was expected or what to do.")]
    string? Expected = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull), Description("The nearest valid name.")]
    string? Nearest = null)
{
    /// <summary>Code of a line of the file that says what is still missing.</summary>
    public const string StillToSay = "still-to-say";

    /// <summary>Code of a part whose height is not known; a rule tells it with what follows.</summary>
    public const string HeightUnknown = "height-unknown";

    /// <summary>Whether it stops the work.</summary>
    [JsonIgnore]
    public bool IsError => Severity == DiagnosticSeverity.Error;

    /// <summary>One line: <c>file:line:column: what is wrong; expected ...; did you mean ...?</c></summary>
    public override string ToString()
    {
        string place = Line <= 0
            ? File
            : string.Create(CultureInfo.InvariantCulture, $"{File}:{Line}:{Math.Max(Column, 1)}");
        string expected = Expected is null ? "" : "; " + Expected;
        string nearest = Nearest is null ? "" : $"; did you mean '{Nearest}'?";
        return $"{place}: {Message}{expected}{nearest}";
    }
}
