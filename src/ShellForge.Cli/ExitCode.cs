using System.Collections.Immutable;

namespace ShellForge.Cli;

/// <summary>What the command says to the script that called it.</summary>
internal enum ExitCode
{
    /// <summary>Done; notes and warnings allowed.</summary>
    Done = 0,

    /// <summary>Done, but a finding says do not print (with <c>--strict</c> also a warning).</summary>
    Stopped = 1,

    /// <summary>The input or the command line is wrong; nothing was written.</summary>
    BadInput = 2,

    /// <summary>A file could not be read or written.</summary>
    FileTrouble = 3,

    /// <summary>A defect of the program itself. The number is what sysexits calls an internal software error.</summary>
    ProgramDefect = 70,

    /// <summary>Stopped by the interrupt key, or asked to end. The number is what a shell reports for the first.</summary>
    Interrupted = 130,
}

/// <summary>The exit statuses in words.</summary>
internal static class ExitCodes
{
    /// <summary>Every status with what it means, as the manual and the README have it.</summary>
    public static ImmutableArray<(ExitCode Code, string Meaning)> Meanings { get; } =
    [
        (ExitCode.Done, "done; notes and warnings allowed"),
        (ExitCode.Stopped, "a finding says do not print, or an inspected file is not sound; the files are written all the same"),
        (ExitCode.BadInput,
            "the board file or the command line is wrong: every mistake is told as `file:line:column: what, expected, nearest`; nothing "
                + "is touched"),
        (ExitCode.FileTrouble, "a file could not be read or written"),
        (ExitCode.ProgramDefect, "a defect of the program itself; what it prints is worth a report"),
        (ExitCode.Interrupted, "stopped by the interrupt key, or asked to end (SIGTERM); nothing more was written"),
    ];
}
