using ShellForge.Cli.Printing;
using ShellForge.Cli.Reading;

namespace ShellForge.Cli.Verbs;

/// <summary>What every verb does with a board file that can't be used: tell all mistakes, touch nothing.</summary>
internal static class BadBoardReport
{
    /// <param name="source">The file.</param>
    /// <param name="bench">Where to tell them.</param>
    /// <param name="document">The mistakes for machines; null to tell people.</param>
    public static ExitCode Print(BoardSource source, Workbench bench, byte[]? document)
    {
        if (document is not null)
        {
            JsonOut.Write(bench, document);
        }
        else
        {
            DiagnosticsText.Write(source.Diagnostics, bench, errorsOnly: false);
        }

        return ExitCode.BadInput;
    }
}
