using System.Diagnostics;
using ShellForge.Geometry.Auditing;
using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Booleans.Settling;
using ShellForge.Testing.Solids;

namespace ShellForge.Benchmarks;

/// <summary>
/// Evaluates random trees and writes each result as DIR/N.stl. A tree that ends in a defect, or in a mesh that the audit rejects, is
/// told and written with as few steps as still fail as DIR/seed-SEED-N.tree. A scale below 1 makes the lattice coarser.
/// </summary>
internal static class FuzzCommand
{
    public static int Run(int seed, int count, string folder, double scale)
    {
        Directory.CreateDirectory(folder);
        RandomTrees trees = new(seed);
        int failures = 0, empty = 0, opened = 0, merged = 0;
        Dictionary<int, int> rounds = [];
        Stopwatch watch = Stopwatch.StartNew();
        for (int n = 0; n < count; n++)
        {
            List<TreeStep> steps = [.. trees.Next().Select(step => step.Scaled(scale))];
            SolidOutcome? outcome = Try(steps, out string? failure);
            if (failure is not null)
            {
                failures++;
                List<TreeStep> few = Minimised(steps);
                Console.WriteLine($"seed {seed} tree {n}: {failure} ({few.Count} of {steps.Count} steps)");
                File.WriteAllLines(Path.Combine(folder, $"seed-{seed}-{n}.tree"), few.Select(step => step.ToString()));
            }

            if (outcome?.Solid is not { } solid)
            {
                continue;
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
            $"seed {seed}: {count} trees, {failures} failures, {empty} empty, {opened} with opened contacts, {merged} merged, "
            + $"rounds {{{byRounds}}}, {watch.Elapsed.TotalSeconds:0.0} s");
        return failures == 0 ? 0 : 1;
    }

    private static SolidOutcome? Try(List<TreeStep> steps, out string? failure)
    {
        try
        {
            SolidOutcome outcome = SolidEvaluator.Evaluate(TreeStep.Tree(steps));
            AuditReport? report = outcome.Solid is { } solid ? MeshAudit.Run(solid.Mesh) : null;
            failure = outcome.Defect?.ToString() ?? (report!.IsClean ? null : $"the audit rejects it: {report.Faults[0]}");
            return outcome;
        }
        catch (Exception error) when (error is not OutOfMemoryException)
        {
            failure = error.ToString();
            return null;
        }
    }

    // Steps left out one by one, from the last, as long as the rest still fails.
    private static List<TreeStep> Minimised(List<TreeStep> steps)
    {
        for (bool shrinks = true; shrinks;)
        {
            shrinks = false;
            for (int i = steps.Count - 1; i >= 0 && steps.Count > 1; i--)
            {
                List<TreeStep> fewer = [.. steps.Where((_, k) => k != i)];
                Try(fewer, out string? failure);
                if (failure is not null)
                {
                    steps = fewer;
                    shrinks = true;
                }
            }
        }

        return steps;
    }
}
