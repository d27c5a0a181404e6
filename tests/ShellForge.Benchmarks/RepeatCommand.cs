using System.Diagnostics;
using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Solids;

namespace ShellForge.Benchmarks;

/// <summary>
/// Evaluates the ring, or the parts named, again and again: something for a profiler to look at. Prints for each part the median of wall
/// time, of processor time, and what was allocated.
/// </summary>
internal static class RepeatCommand
{
    public static int Run(string folder, int repetitions, string[] names)
    {
        using Workload workload = Workload.Read(folder);
        double sum = 0;
        foreach ((string name, List<(char, int[])> steps) in workload.Parts)
        {
            if (names.Length > 0 ? !names.Contains(name) : name is not ("tub" or "baffle" or "cover"))
            {
                continue;
            }

            Solid tree = workload.PreparedTree(steps);
            List<double> wall = [], processor = [];
            long allocated = 0;
            for (int i = 0; i < repetitions + 1; i++)
            {
                long before = GC.GetTotalAllocatedBytes(true);
                TimeSpan start = Process.GetCurrentProcess().TotalProcessorTime;
                Stopwatch watch = Stopwatch.StartNew();
                SolidEvaluator.Evaluate(tree).Require();
                if (i > 0)
                {
                    wall.Add(watch.Elapsed.TotalMilliseconds);
                    processor.Add((Process.GetCurrentProcess().TotalProcessorTime - start).TotalMilliseconds);
                    allocated = GC.GetTotalAllocatedBytes(true) - before;
                }
            }

            wall.Sort();
            processor.Sort();
            sum += processor[processor.Count / 2];
            Console.WriteLine(
                $"{name} {wall[wall.Count / 2]:0.0} ms wall, best {wall[0]:0.0}; {processor[processor.Count / 2]:0.0} ms processor; "
                + $"{allocated / 1048576.0:0.0} MB allocated");
        }

        Console.WriteLine($"all {sum:0.0} ms processor");
        return 0;
    }
}
