using System.Diagnostics;
using ShellForge.Testing;

namespace ShellForge.EndToEnd.Tests;

/// <summary>The published executable, where <c>SHELLFORGE_NATIVE</c> says where it is.</summary>
public class NativeExecutableTests
{
    private static (int Exit, string Out) Run(string folder, params string[] args)
    {
        string? program = Environment.GetEnvironmentVariable("SHELLFORGE_NATIVE");
        Skip.If(string.IsNullOrEmpty(program), "SHELLFORGE_NATIVE does not name a published executable");
        var start = new ProcessStartInfo(program!)
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true
        };
        foreach (string arg in args)
        {
            start.ArgumentList.Add(arg);
        }

        using Process process = Process.Start(start)!;
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output + errors.Result);
    }

    [SkippableFact]
    public void It_makes_the_very_bytes_of_the_sample()
    {
        using var folder = new TemporaryFolder();
        string sample = Repository.At("out-samples", "mooring-beacon");

        (int exit, string told) = Run(sample, "make", "board.yaml", "-o", folder.Path);

        Assert.True(exit == 0, told);
        foreach (string path in Directory.EnumerateFiles(folder.Path).Where(path => !path.EndsWith(".3mf", StringComparison.Ordinal)))
        {
            Assert.True(
                File.ReadAllBytes(Path.Combine(sample, Path.GetFileName(path))).AsSpan().SequenceEqual(File.ReadAllBytes(path)),
                $"{Path.GetFileName(path)} differs");
        }
    }

    [SkippableFact]
    public void It_completes_and_helps()
    {
        Assert.Contains("--formats", Run(Repository.Root, "[suggest:20]", "shellforge make --fo").Out, StringComparison.Ordinal);
        Assert.Contains("shellforge VERB ... [options]", Run(Repository.Root, "--help").Out, StringComparison.Ordinal);
    }
}
