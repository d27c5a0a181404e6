using System.Diagnostics;
using ShellForge.Testing;

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
    public static Process Start(string bin, string folder, string program, params string[] arguments) =>
        ForeignRun.Start(program, folder, arguments, OnPath(bin));

    /// <summary>Runs a program to its end.</summary>
    public static ForeignRun Run(string bin, string folder, string program, params string[] arguments) =>
        ForeignRun.Of(program, folder, arguments, OnPath(bin));

    private static (string Name, string Value) OnPath(string bin) =>
        ("PATH", $"{bin}:{Environment.GetEnvironmentVariable("PATH")}:/usr/sbin");
}
