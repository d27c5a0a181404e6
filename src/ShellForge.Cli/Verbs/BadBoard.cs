using ShellForge.Cli.Reading;
using ShellForge.Cli.Telling;

namespace ShellForge.Cli.Verbs;

/// <summary>What every verb does with a board file that can't be used: tell all mistakes, touch nothing.</summary>
internal static class BadBoard
{
    public static ExitCode Tell(BoardSource source, Workbench bench, bool json)
    {
        if (json)
        {
            JsonOut.Write(bench, writer =>
            {
                writer.WriteNumber("exit", (int)ExitCode.BadInput);
                DiagnosticsText.WriteJson(writer, source.Diagnostics);
            });
        }
        else
        {
            DiagnosticsText.Write(source.Diagnostics, bench, errorsOnly: false);
        }

        return ExitCode.BadInput;
    }
}
