using ShellForge.Testing;

namespace ShellForge.EndToEnd.Tests;

/// <summary>Whether a program that people get makes the samples as they are kept.</summary>
internal static class SampleBytes
{
    /// <summary>Makes a sample with a program, and holds every kept file against what it wrote.</summary>
    /// <param name="run">Runs the program in a folder.</param>
    /// <param name="name">The sample.</param>
    public static void AreMadeBy(Func<string, string[], ForeignRun> run, string name)
    {
        using var folder = new TemporaryFolder();
        string sample = Repository.At("out-samples", name);

        ForeignRun made = run(sample, ["make", "board.yaml", "-o", folder.Path]);

        Assert.True(made.Exit == 0, made.Told);
        foreach (string path in Directory.EnumerateFiles(folder.Path))
        {
            string kept = Path.Combine(sample, Path.GetFileName(path));
            Assert.True(
                !File.Exists(kept) || File.ReadAllBytes(kept).AsSpan().SequenceEqual(File.ReadAllBytes(path)),
                $"{Path.GetFileName(path)} differs");
        }
    }
}
