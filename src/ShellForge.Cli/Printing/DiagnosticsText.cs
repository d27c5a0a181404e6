using ShellForge.Board.Diagnostics;

namespace ShellForge.Cli.Printing;

/// <summary>Diagnostics for people.</summary>
internal static class DiagnosticsText
{
    /// <summary>One line each on the error writer, as editors and compilers know them.</summary>
    public static void Write(IEnumerable<Diagnostic> diagnostics, Workbench bench, bool errorsOnly)
    {
        foreach (Diagnostic diagnostic in diagnostics.Where(d => d.IsError || !errorsOnly))
        {
            bench.Complain(diagnostic.ToString());
        }
    }
}
