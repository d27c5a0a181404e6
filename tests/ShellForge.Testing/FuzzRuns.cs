using System.Diagnostics;

namespace ShellForge.Testing;

/// <summary>Spoiled files one after the other: a number of them in any case, and more for the time that was asked for.</summary>
/// <param name="usual">Files of the usual run.</param>
public sealed class FuzzRuns(int usual)
{
    private readonly Stopwatch _clock = Stopwatch.StartNew();

    /// <summary>What files are drawn from: the same in every usual run, others each time that minutes are asked for.</summary>
    /// <param name="seed">The seed of the usual run.</param>
    public static Random Dice(int seed) => new(FuzzTime.Asked is null ? seed : Environment.TickCount + seed);

    /// <summary>Files that were tried.</summary>
    public int Tried { get; private set; }

    /// <summary>Whether another file is tried.</summary>
    public bool Next()
    {
        bool goesOn = Tried < usual || _clock.Elapsed < FuzzTime.Asked;
        Tried += goesOn ? 1 : 0;
        return goesOn;
    }
}
