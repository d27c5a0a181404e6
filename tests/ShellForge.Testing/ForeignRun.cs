using System.Diagnostics;

namespace ShellForge.Testing;

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
        using Process process = Start(program, folder, args, environment);
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return new ForeignRun(process.ExitCode, output + errors.Result);
    }

    /// <summary>Starts a program whose output and errors are read.</summary>
    /// <param name="program">The program.</param>
    /// <param name="folder">Where it works.</param>
    /// <param name="args">What it is given.</param>
    /// <param name="environment">Variables beside those of this process.</param>
    public static Process Start(
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

        return Process.Start(start)!;
    }

    /// <summary>Full name of a program on the path; null where it is not there.</summary>
    /// <param name="program">The program.</param>
    public static string? Find(string program) =>
        (Environment.GetEnvironmentVariable("PATH") + ":/usr/sbin").Split(Path.PathSeparator)
            .Select(folder => Path.Combine(folder, program)).FirstOrDefault(File.Exists);
}
