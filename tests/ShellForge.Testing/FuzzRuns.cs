using System.Diagnostics;
using System.Globalization;

namespace ShellForge.Testing;

/// <summary>
/// Spoiled files one after the other: a number of them in any case, and more for as many minutes as the environment variable
/// SHELLFORGE_FUZZ_MINUTES says.
/// </summary>
/// <param name="usual">Files of the usual run.</param>
public sealed class FuzzRuns(int usual)
{
    private static readonly TimeSpan? Asked = Environment.GetEnvironmentVariable("SHELLFORGE_FUZZ_MINUTES") is { } minutes
        ? TimeSpan.FromMinutes(double.Parse(minutes, CultureInfo.InvariantCulture)) : null;

    private readonly Stopwatch _clock = Stopwatch.StartNew();

    /// <summary>What files are drawn from: the same in every usual run, others each time that minutes are asked for.</summary>
    /// <param name="seed">The seed of the usual run.</param>
    public static Random Dice(int seed) => new(Asked is null ? seed : Environment.TickCount + seed);

    /// <summary>Files that were tried.</summary>
    public int Tried { get; private set; }

    /// <summary>Whether another file is tried.</summary>
    public bool Next()
    {
        bool goesOn = Tried < usual || _clock.Elapsed < Asked;
        Tried += goesOn ? 1 : 0;
        return goesOn;
    }
}
