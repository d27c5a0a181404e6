using ShellForge.Testing;

namespace ShellForge.EndToEnd.Tests;

/// <summary>The published executable, where <c>SHELLFORGE_NATIVE</c> says where it is.</summary>
public class NativeExecutableTests
{
    private static ForeignRun Run(string folder, params string[] args)
    {
        string? program = Environment.GetEnvironmentVariable("SHELLFORGE_NATIVE");
        Skip.If(string.IsNullOrEmpty(program), "SHELLFORGE_NATIVE does not name a published executable");
        return ForeignRun.Of(program!, folder, args);
    }

    [SkippableFact]
    public void It_makes_the_very_bytes_of_the_sample() => SampleBytes.AreMadeBy(Run, "mooring-beacon");

    [SkippableFact]
    public void It_completes_and_helps()
    {
        Assert.Contains("--formats", Run(Repository.Root, "[suggest:20]", "shellforge make --fo").Told, StringComparison.Ordinal);
        Assert.Contains("shellforge VERB ... [options]", Run(Repository.Root, "--help").Told, StringComparison.Ordinal);
    }
}
