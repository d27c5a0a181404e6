using System.Diagnostics;
using ShellForge.Board.Yaml;
using ShellForge.Checks;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Booleans.Settling;
using ShellForge.Geometry.Measuring;
using ShellForge.Housing;
using ShellForge.Planning;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Benchmarks;

/// <summary>
/// Boards drawn by seeds over the whole of what a file may say, planned, made or checked as a user would. What ends in an exception, in a
/// mesh that the audit rejects or in a part of two bodies is told by its seed and written as DIR/SEED.yaml.
/// </summary>
internal static class BoardsCommand
{
    /// <summary>Runs seeds from the first on.</summary>
    /// <param name="stage">How far: plan, make (solids and their audit) or check (all rules).</param>
    /// <param name="first">First seed.</param>
    /// <param name="count">How many.</param>
    /// <param name="folder">Where failures are written.</param>
    public static int Run(string stage, int first, int count, string folder)
    {
        Directory.CreateDirectory(folder);
        int refused = 0, failures = 0, printable = 0;
        Stopwatch watch = Stopwatch.StartNew();
        for (int seed = first; seed < first + count; seed++)
        {
            string text = AnyBoards.Text(seed);
            string? failure;
            try
            {
                BoardReadResult read = BoardFileReader.Read("board.yaml", text, WrittenBoard.Shipped, []);
                refused += read.File is null ? 1 : 0;
                failure = read.File is null ? null : Try(stage, HousingPlanner.Plan(read.File), ref printable);
            }
            catch (Exception error) when (error is not OutOfMemoryException)
            {
                failure = error.GetType().Name + ": " + error.Message + "\n"
                    + string.Join('\n', (error.StackTrace ?? "").Split('\n').Take(9));
            }

            if (failure is not null)
            {
                failures++;
                Console.WriteLine($"seed {seed}: {failure}");
                File.WriteAllText(Path.Combine(folder, $"{seed}.yaml"), text);
            }
        }

        Console.WriteLine(
            $"{stage}, seeds {first} to {first + count - 1}: {count - refused} boards, {refused} refused as input, {failures} failures, "
                + $"{printable} to be printed, {watch.Elapsed.TotalSeconds:0} s");
        return failures == 0 ? 0 : 1;
    }

    private static string? Try(string stage, HousingPlan plan, ref int printable)
    {
        if (stage == "plan")
        {
            return null;
        }

        var housing = new HousingUnderCheck { Board = plan.Source, Plan = plan, Parts = PartMaker.Make(plan) };
        string[] unsound = [.. housing.Parts.Select(part => Unsound(plan, part)).OfType<string>()];
        if (stage == "make")
        {
            return unsound.Length == 0 ? null : string.Join("; ", unsound);
        }

        Finding[] findings = [.. CheckRun.Run(housing, RuleList.All)];
        printable += findings.All(finding => finding.Severity != Severity.Stop) ? 1 : 0;
        return unsound.Length == 0 ? null : string.Join("; ", unsound);
    }

    // Bezel round which a fused diffuser goes, and the diffuser's own windows, hold together when printed.
    private static int Bodies(HousingPlan plan, MadePart part) =>
        plan.Diffuser.Fit == DiffuserFit.PrintedIn && part.Name is PartNames.Cover or PartNames.Diffuser ? 1
            : Measure.Shells(part.PrintMesh.Mesh);

    private static string? Unsound(HousingPlan plan, MadePart part)
    {
        KernelDefect? defect = part.InPrint.Defect;
        return defect is not null ? $"{part.Name}: {defect}"
            : part.PrintMesh.IsEmpty ? $"{part.Name} is empty"
            : Bodies(plan, part) is > 1 and int bodies ? $"{part.Name} in {bodies} bodies"
            : null;
    }
}
