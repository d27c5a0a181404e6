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
}
