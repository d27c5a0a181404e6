using System.Diagnostics;

namespace ShellForge.EndToEnd.Tests;

/// <summary>A process that has ended.</summary>
/// <param name="Exit">Its status.</param>
/// <param name="Told">What it wrote, output and then errors.</param>
public sealed record ForeignRun(int Exit, string Told)
{
    /// <summary>Runs a program to its end.</summary>
    /// <param name="program">The program.</param>
    /// <param name="folder">Where it works.</param>
    /// <param name="args">What it is given.</param>
    /// <param name="environment">Variables beside those of this process.</param>
    public static ForeignRun Of(
        string program, string folder, IEnumerable<string> args, params IEnumerable<(string Name, string Value)> environment)
    {
        var start = new ProcessStartInfo(program, args)
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach ((string name, string value) in environment)
        {
            start.Environment[name] = value;
        }

        using Process process = Process.Start(start)!;
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return new ForeignRun(process.ExitCode, output + errors.Result);
    }
}
