using ShellForge.Cli;

namespace ShellForge.EndToEnd.Tests;

/// <summary>Runs the command in process.</summary>
internal static class CommandRun
{
    /// <summary>Runs it in a folder.</summary>
    /// <returns>The exit status, and everything it printed.</returns>
    public static (int Exit, string Told) Run(string folder, params string[] args)
    {
        using var told = new StringWriter { NewLine = "\n" };
        int exit = ShellForgeCommand.Run(args, new Workbench { Out = told, Err = told, Folder = folder });
        return (exit, told.ToString());
    }
}
