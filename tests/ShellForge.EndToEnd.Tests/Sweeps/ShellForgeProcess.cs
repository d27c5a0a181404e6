using System.Diagnostics;

namespace ShellForge.EndToEnd.Tests.Sweeps;

/// <summary>The command as a process of its own, and scripts that run it.</summary>
internal static class ShellForgeProcess
{
    /// <summary>Writes a program <c>shellforge</c> into a folder, for scripts that look for it on their path.</summary>
    public static string Install(string folder)
    {
        string bin = Directory.CreateDirectory(Path.Combine(folder, "bin")).FullName;
        string path = Path.Combine(bin, "shellforge");
        string run = Environment.GetEnvironmentVariable("SHELLFORGE_NATIVE") is { Length: > 0 } native
            ? $"'{native}'"
            : $"'{Environment.ProcessPath}' exec '{Path.Combine(AppContext.BaseDirectory, "shellforge.dll")}'";
        File.WriteAllText(path, $"#!/bin/sh\nexec {run} \"$@\"\n");
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        }

        return bin;
    }

    /// <summary>Starts a program with a folder before everything on its path.</summary>
    public static Process Start(string bin, string folder, string program, params string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments)
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true
        };
        start.Environment["PATH"] = $"{bin}:{Environment.GetEnvironmentVariable("PATH")}:/usr/sbin";
        return Process.Start(start)!;
    }

    /// <summary>Runs a program to its end.</summary>
    /// <returns>Its exit status, and all it said.</returns>
    public static (int Exit, string Told) Run(string bin, string folder, string program, params string[] arguments)
    {
        using Process process = Start(bin, folder, program, arguments);
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string told = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, told + errors.Result);
    }

    /// <summary>Whether a program is on the path.</summary>
    public static bool Has(string program) =>
        (Environment.GetEnvironmentVariable("PATH") + ":/usr/sbin").Split(':').Any(folder => File.Exists(Path.Combine(folder, program)));
}
