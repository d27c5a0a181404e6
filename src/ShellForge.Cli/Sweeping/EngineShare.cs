using System.Globalization;
using ShellForge.Sweep.Variants;

namespace ShellForge.Cli.Sweeping;

/// <summary>
/// Which share of a sweep an engine has given this process, by the variables that it sets for the tasks of an array. An engine that sets
/// no count gets it from <see cref="CountVariable"/>.
/// </summary>
internal static class EngineShare
{
    /// <summary>Says how many shares there are where the engine doesn't.</summary>
    public const string CountVariable = "SHELLFORGE_SHARES";

    private static readonly Engine[] Engines =
    [
        new("SLURM_ARRAY_TASK_ID", "SLURM_ARRAY_TASK_COUNT", "SLURM_ARRAY_TASK_MIN", "SLURM_ARRAY_TASK_STEP", 0),
        new("JOB_COMPLETION_INDEX", CountVariable, null, null, 0),
        new("AWS_BATCH_JOB_ARRAY_INDEX", "AWS_BATCH_JOB_ARRAY_SIZE", null, null, 0),
        new("SGE_TASK_ID", "SGE_TASK_LAST", "SGE_TASK_FIRST", "SGE_TASK_STEPSIZE", 1),
        new("PARALLEL_SEQ", CountVariable, null, null, 1),
    ];

    /// <summary>The share; null where no engine runs this process.</summary>
    /// <param name="variable">Variables of the environment.</param>
    /// <param name="from">What the share was read from; empty for none.</param>
    /// <param name="fault">Why what is there can't be used; null where it can.</param>
    public static Shard? Read(Func<string, string?> variable, out string from, out string? fault)
    {
        fault = null;
        foreach (Engine engine in Engines)
        {
            // Grid Engine says "undefined" to a task that is in no array.
            if (variable(engine.Index) is { Length: > 0 } index && index != "undefined")
            {
                string? count = variable(engine.Count) is { Length: > 0 } said ? said : variable(CountVariable);

                // A program that runs others in order without an array says no count, and means no shares.
                if (string.IsNullOrEmpty(count) && engine.Index == "PARALLEL_SEQ")
                {
                    continue;
                }

                from = engine.Index;
                Shard? shard = count is null ? null : engine.Share(index, count, variable);
                fault = shard is null
                    ? $"{engine.Index} is '{index}' and {engine.Count} is '{count}': no share of a sweep; set {CountVariable} to the "
                        + $"number of shares, or say --shard i/n"
                    : null;
                return shard;
            }
        }

        from = "";
        return null;
    }

    private sealed record Engine(string Index, string Count, string? First, string? Step, int Base)
    {
        public Shard? Share(string index, string count, Func<string, string?> variable)
        {
            if (!Number(index, out int at) || !Number(count, out int counted))
            {
                return null;
            }

            int first = First is not null && Number(variable(First), out int said) ? said : Base;
            int step = Step is not null && Number(variable(Step), out int by) && by > 0 ? by : 1;

            // One engine counts its tasks, another names the last of them.
            int shares = Count == "SGE_TASK_LAST" ? ((counted - first) / step) + 1 : counted;
            int share = (at - first) / step;
            return shares > 0 && share >= 0 && share < shares && (at - first) % step == 0 ? new Shard(share, shares) : null;
        }

        private static bool Number(string? text, out int number) =>
            int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out number);
    }
}
