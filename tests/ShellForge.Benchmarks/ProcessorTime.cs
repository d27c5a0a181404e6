using System.Diagnostics;

namespace ShellForge.Benchmarks;

/// <summary>Processor time of some work and the wall's, ms.</summary>
internal static class ProcessorTime
{
    public static (double Median, double Best, double Wall) Of(int repetitions, Func<object> work)
    {
        List<double> times = [];
        List<double> walls = [];
        for (int i = 0; i < repetitions; i++)
        {
            TimeSpan start = Process.GetCurrentProcess().TotalProcessorTime;
            long wall = Stopwatch.GetTimestamp();
            GC.KeepAlive(work());
            walls.Add(Stopwatch.GetElapsedTime(wall).TotalMilliseconds);
            times.Add((Process.GetCurrentProcess().TotalProcessorTime - start).TotalMilliseconds);
        }

        times.Sort();
        walls.Sort();
        return (times[repetitions / 2], times[0], walls[repetitions / 2]);
    }
}
