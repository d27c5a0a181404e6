using System.Diagnostics;

namespace ShellForge.Benchmarks;

/// <summary>Processor time of some work, ms.</summary>
internal static class ProcessorTime
{
    public static (double Median, double Best) Of(int repetitions, Func<object> work)
    {
        List<double> times = [];
        for (int i = 0; i < repetitions; i++)
        {
            TimeSpan start = Process.GetCurrentProcess().TotalProcessorTime;
            GC.KeepAlive(work());
            times.Add((Process.GetCurrentProcess().TotalProcessorTime - start).TotalMilliseconds);
        }

        times.Sort();
        return (times[repetitions / 2], times[0]);
    }
}
