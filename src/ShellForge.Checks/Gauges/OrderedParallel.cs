using System.Collections.Concurrent;

namespace ShellForge.Checks.Gauges;

/// <summary>Work on many things at once that comes out in their order, whatever the number of cores.</summary>
internal static class OrderedParallel
{
    /// <summary>
    /// What is worked out for each thing. They are taken one at a time, since some take a thousand times as long as others.
    /// </summary>
    public static TResult[] Map<T, TResult>(IReadOnlyList<T> things, Func<T, TResult> work, CancellationToken cancel = default)
    {
        var results = new TResult[things.Count];
        Parallel.ForEach(
            Partitioner.Create(Enumerable.Range(0, things.Count), EnumerablePartitionerOptions.NoBuffering),
            new ParallelOptions { CancellationToken = cancel },
            i => results[i] = work(things[i]));
        return results;
    }
}
