using System.Diagnostics;
using ShellForge.Geometry.Auditing;
using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Solids;

namespace ShellForge.Benchmarks;

/// <summary>Evaluates random trees and writes each result as DIR/N.stl; prints every tree that ends in a defect.</summary>
internal static class FuzzCommand
{
    public static int Run(int seed, int count, string folder)
    {
        Directory.CreateDirectory(folder);
        RandomTrees trees = new(seed);
        int defects = 0, empty = 0, opened = 0, merged = 0;
        Dictionary<int, int> rounds = [];
        Stopwatch watch = Stopwatch.StartNew();
        for (int n = 0; n < count; n++)
        {
            List<(bool IsUnion, Solid Operand)> steps = trees.Next();
            SolidOutcome outcome;
            try
            {
                outcome = SolidEvaluator.Evaluate(RandomTrees.Tree(steps));
            }
            catch (Exception error) when (error is not OutOfMemoryException)
            {
                defects++;
                Console.WriteLine($"seed {seed} tree {n}: {error}");
                continue;
            }

            if (outcome.Solid is not { } solid)
            {
                defects++;
                Console.WriteLine($"seed {seed} tree {n}: {outcome.Defect}");
                continue;
            }

            AuditReport report = MeshAudit.Run(solid.Mesh);
            if (!report.IsClean)
            {
                defects++;
                Console.WriteLine($"seed {seed} tree {n}: the audit rejects it: {report.Faults[0]}");
            }

            rounds[outcome.Rounds] = rounds.GetValueOrDefault(outcome.Rounds) + 1;
            opened += outcome.Openings.IsEmpty ? 0 : 1;
            merged += outcome.MergeSteps > 0 ? 1 : 0;
            empty += solid.IsEmpty ? 1 : 0;
            if (!solid.IsEmpty)
            {
                BinaryStl.Write(Path.Combine(folder, $"{n}.stl"), solid.Mesh);
            }
        }

        string byRounds = string.Join(", ", rounds.OrderBy(r => r.Key).Select(r => $"{r.Key}: {r.Value}"));
        Console.WriteLine(
            $"seed {seed}: {count} trees, {defects} defects, {empty} empty, {opened} with opened contacts, {merged} merged, "
            + $"rounds {{{byRounds}}}, {watch.Elapsed.TotalSeconds:0.0} s");
        return defects == 0 ? 0 : 1;
    }
}
