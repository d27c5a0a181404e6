namespace ShellForge.Geometry.Booleans.Tables;

/// <summary>
/// Work that is shared among cores. It is cut into runs of neighbouring items; whoever calls joins the runs' results in their order, so
/// that neither the number of threads nor of runs shows in what comes out.
/// </summary>
internal static class ParallelRuns
{
    // More runs than cores: what takes longer on one core is made up for on the others.
    private const int RunsPerThread = 4;

    /// <summary>How many runs to cut items into: one when there are fewer than are worth waking another core for.</summary>
    public static int Count(int items, int worth, int threads)
    {
        int cores = threads > 0 ? threads : Environment.ProcessorCount;
        return items < worth || cores == 1 ? 1 : Math.Min(items, RunsPerThread * cores);
    }

    /// <summary>The items of a run.</summary>
    public static (int From, int To) Range(int run, int runs, int items) =>
        ((int)((long)items * run / runs), (int)((long)items * (run + 1) / runs));

    /// <summary>Calls back for each run, one after the other or on up to so many threads (-1: all cores).</summary>
    public static void ForEach(int runs, int threads, Action<int> body, CancellationToken ct) =>
        ForEach(runs, threads, static () => false, (run, _) => body(run), ct);

    /// <summary>The same with tools that each thread makes once.</summary>
    public static void ForEach<T>(int runs, int threads, Func<T> tools, Action<int, T> body, CancellationToken ct)
    {
        if (runs == 1)
        {
            ct.ThrowIfCancellationRequested();
            body(0, tools());
            return;
        }

        Parallel.For(
            0,
            runs,
            new ParallelOptions { CancellationToken = ct, MaxDegreeOfParallelism = threads },
            tools,
            (run, _, own) =>
            {
                body(run, own);
                return own;
            },
            static _ => { });
    }
}
