namespace ShellForge.Board.Diagnostics;

/// <summary>How bad a fault of the input is.</summary>
public enum DiagnosticSeverity
{
    /// <summary>Told for information; the input is read.</summary>
    Note,

    /// <summary>Read, but probably not what was meant.</summary>
    Warning,

    /// <summary>Not read; nothing is written.</summary>
    Error,
}

/// <summary>What is wrong with an input file, and where.</summary>
/// <param name="File">The file as the user named it.</param>
/// <param name="Line">Line, from 1; 0 where the fault has no line (an empty file).</param>
/// <param name="Column">Column in characters, from 1; 0 where the fault has none.</param>
/// <param name="Code">A stable name of the kind of fault, such as <c>unknown-key</c>.</param>
/// <param name="Severity">How bad it is.</param>
/// <param name="Message">What is wrong, what was expected, and the nearest valid name where there is one.</param>
public sealed record Diagnostic(
    string File, int Line, int Column, string Code, DiagnosticSeverity Severity, string Message)
{
    /// <summary>The line a user reads: <c>file:line:column: message</c>.</summary>
    public override string ToString() => $"{File}:{Line}:{Column}: {Message}";
}
