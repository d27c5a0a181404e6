using System.Diagnostics;
using ShellForge.Benchmarks.Promises;
using ShellForge.Board.Description;
using ShellForge.Board.Yaml;
using ShellForge.Checks;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Housing;
using ShellForge.Planning;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Benchmarks;

/// <summary>
/// Boards drawn by seeds over the whole of what a file may say, planned, made or checked as a user would. What ends in an exception, in a
/// mesh that the audit rejects, in a part of two bodies or in no time, and what is told to be printed and breaks a promise, is told by its
/// seed and written as DIR/SEED.yaml.
/// </summary>
internal static class BoardsCommand
{
    // A board that takes longer than this hangs, as far as its maker can tell, s of processor time: other work slows the clock.
    private const double Hang = 30;

    // A run ends by itself after so long, s, and says how far it came: longer ones are cut into slices.
    private const double Longest = 240;

    /// <summary>Runs seeds from the first on.</summary>
    /// <param name="stage">How far: draw (write the files), plan, make (solids and their audit) or check (all rules and promises).</param>
    /// <param name="first">First seed.</param>
    /// <param name="count">How many at the most.</param>
    /// <param name="folder">Where failures are written.</param>
    public static int Run(string stage, int first, int count, string folder)
    {
        Directory.CreateDirectory(folder);
        int refused = 0, failures = 0, printable = 0;
        (int Seed, double Seconds) slowest = default;
        Stopwatch watch = Stopwatch.StartNew();
        int seed = first;
        for (; seed < first + count && watch.Elapsed.TotalSeconds < Longest; seed++)
        {
            string text = AnyBoards.Text(seed);
            if (stage == "draw")
            {
                File.WriteAllText(Path.Combine(folder, $"{seed}.yaml"), text);
                continue;
            }

            string? failure;
            TimeSpan began = Environment.CpuUsage.TotalTime;
            try
            {
                BoardReadResult read = BoardFileReader.Read("board.yaml", text, WrittenBoard.Shipped, []);
                refused += read.File is null ? 1 : 0;
                failure = read.File is null ? null : Try(stage, read.File, ref printable);
            }
            catch (Exception error) when (error is not OutOfMemoryException)
            {
                failure = error.GetType().Name + ": " + error.Message + "\n"
                    + string.Join('\n', (error.StackTrace ?? "").Split('\n').Take(9));
            }

            double seconds = (Environment.CpuUsage.TotalTime - began).TotalSeconds;
            slowest = seconds > slowest.Seconds ? (seed, seconds) : slowest;
            failure ??= seconds > Hang ? $"took {seconds:0} s of processor time" : null;
            if (failure is not null)
            {
                failures++;
                Console.WriteLine($"seed {seed}: {failure}");
                File.WriteAllText(Path.Combine(folder, $"{seed}.yaml"), text);
            }
        }

        Console.WriteLine(
            $"{stage}, seeds {first} to {seed - 1}: {seed - first - refused} boards, {refused} refused as input, {failures} failures, "
                + $"{printable} to be printed, {watch.Elapsed.TotalSeconds:0} s, the slowest {slowest.Seed} with {slowest.Seconds:0.0} s");
        return failures == 0 ? 0 : 1;
    }

    /// <summary>Boards that were written down before, each with what became of it.</summary>
    /// <param name="stage">How far: plan, make or check.</param>
    /// <param name="files">Board files.</param>
    public static int Again(string stage, string[] files)
    {
        int failures = 0;
        foreach (string file in files)
        {
            Stopwatch watch = Stopwatch.StartNew();
            int printable = 0;
            BoardReadResult read = BoardFileReader.Read(file, File.ReadAllText(file), WrittenBoard.Shipped, []);
            string? failure = read.File is null ? "refused as input" : Try(stage, read.File, ref printable);
            failures += failure is null ? 0 : 1;
            Console.WriteLine($"{Path.GetFileName(file)}: {failure ?? "whole"}, {watch.Elapsed.TotalSeconds:0} s");
        }

        return failures == 0 ? 0 : 1;
    }

    private static string? Try(string stage, BoardFile board, ref int printable)
    {
        HousingPlan plan = HousingPlanner.Plan(board);
        if (stage == "plan")
        {
            return null;
        }

        var housing = new HousingUnderCheck { Board = board, Plan = plan, Parts = PartMaker.Make(plan) };
        string[] unsound = [.. HousingPromises.Unsound(housing.Parts)];
        if (stage == "make" || unsound.Length > 0)
        {
            return unsound.Length == 0 ? null : string.Join("; ", unsound);
        }

        if (CheckRun.Run(housing, RuleList.All).Any(finding => finding.Severity == Severity.Stop))
        {
            return null;
        }

        printable++;
        string[] broken = [.. HousingPromises.Broken(housing)];
        return broken.Length == 0 ? null : "told to be printed, but " + string.Join("; ", broken);
    }
}
