using System.Diagnostics;
using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Booleans.Settling;
using ShellForge.Geometry.Solids;

namespace ShellForge.Benchmarks;

/// <summary>Evaluates the parts of the workload and writes each as OUT/PART.stl.</summary>
internal static class WorkloadCommand
{
    public static int Run(string folder, string target, string[] names)
    {
        Directory.CreateDirectory(target);
        using Workload workload = Workload.Read(folder);
        int defects = 0;
        foreach ((string name, List<(char, int[])> steps) in workload.Parts)
        {
            if (names.Length > 0 && !names.Contains(name))
            {
                continue;
            }

            Solid tree = Workload.Tree(steps, workload.Mesh);
            Stopwatch watch = Stopwatch.StartNew();
            SolidOutcome outcome = SolidEvaluator.Evaluate(tree);
            double milliseconds = watch.Elapsed.TotalMilliseconds;
            if (outcome.Solid is not { } solid)
            {
                Console.WriteLine($"{name} defect: {outcome.Defect}");
                defects++;
                continue;
            }

            BinaryStl.Write(Path.Combine(target, name + ".stl"), solid.Mesh);
            Console.WriteLine(
                $"{name} {milliseconds:0.0} ms, {solid.TriangleCount} triangles, volume {BinaryStl.Volume(solid.Mesh):0.0000000} mm3, "
                + $"{outcome.Rounds} rounds, {outcome.Openings.Length} openings");
        }

        return defects == 0 ? 0 : 1;
    }
}
