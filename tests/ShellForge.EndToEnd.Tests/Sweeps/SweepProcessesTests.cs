using System.Diagnostics;
using ShellForge.Testing;

namespace ShellForge.EndToEnd.Tests.Sweeps;

public class SweepProcessesTests
{
    private const string Board =
        """
        format: shellforge/1
        name: Buoy
        board:
          outline: {disc: 40}
          thickness: 1.6
          holes:
            - {circle: 33, count: 2, from: 0, diameter: 2.2}
          pixels: []
        housing:
          insert: m2x3-od3.6
          cable: {round: 3.5, angle: 270, relief: tie}
          closure: snap
        print: {printer: fdm-0.4, shell: petg-black, diffuser: petg-white}
        """;

    // One of the five can't be made, and says so in every way of running.
    private const string Plan =
        """
        format: shellforge-plan/1
        board: buoy.yaml
        vary:
          housing.floor: [1.6, 2.4]
          housing.walls: [3, 4]
        cases:
          nothing: {housing.cable: {part: J9}}
        mark: names
        """;

    private static void Lay(TemporaryFolder folder)
    {
        folder.Write("buoy.yaml", Board);
        folder.Write("plan.yaml", Plan);
    }

    // Everything but the folders of writers that may still live.
    private static SortedDictionary<string, string> Made(TemporaryFolder folder) => new(
        folder.Snapshot()
            .Where(file => file.Key.StartsWith("out/", StringComparison.Ordinal)
                && !file.Key.Contains("/writer-", StringComparison.Ordinal)).ToDictionary(),
        StringComparer.Ordinal);

    private static SortedDictionary<string, string> OneRun()
    {
        using var folder = new TemporaryFolder();
        Lay(folder);
        (int exit, string told) = CommandRun.Run(folder.Path, "sweep", "plan.yaml", "-o", "out", "-q");
        Assert.True(exit == 1, told);
        SortedDictionary<string, string> made = Made(folder);
        Assert.Equal(4, made.Keys.Count(name => name.EndsWith("/report.json", StringComparison.Ordinal)));
        return made;
    }

    [SkippableFact]
    public void Killed_at_random_and_taken_up_again_a_sweep_ends_in_the_bytes_of_an_undisturbed_one()
    {
        Skip.If(OperatingSystem.IsWindows(), "runs a shell script");
        const int kills = 12;
        using var folder = new TemporaryFolder();
        Lay(folder);
        string bin = ShellForgeProcess.Install(folder.Path);
        var random = new Random(20);
        int inTheMiddle = 0;
        for (int i = 0; i < kills; i++)
        {
            using Process process = ShellForgeProcess.Start(bin, folder.Path, "shellforge", "sweep", "plan.yaml", "-o", "out", "-q");
            if (!process.WaitForExit(random.Next(200, 1800)))
            {
                process.Kill();
                process.WaitForExit();
                inTheMiddle++;
            }
        }

        Assert.True(inTheMiddle >= kills / 2, $"only {inTheMiddle} of {kills} were killed in the middle");
        (int exit, string told) = ShellForgeProcess.Run(bin, folder.Path, "shellforge", "sweep", "plan.yaml", "-o", "out", "-q");

        Assert.True(exit == 1, told);
        Assert.Equal(OneRun(), Made(folder));
        Assert.Empty(Directory.GetDirectories(folder.File("out/sweep-state")));
    }

    [SkippableFact]
    public void Shares_that_parallel_runs_by_the_printed_script_join_to_the_bytes_of_one_run()
    {
        Skip.IfNot(ForeignRun.Find("parallel") is not null, "GNU parallel is not installed");
        using var folder = new TemporaryFolder();
        Lay(folder);
        string bin = ShellForgeProcess.Install(folder.Path);
        (_, string script) = CommandRun.Run(folder.Path, "sweep", "plan.yaml", "-o", "out", "--script", "parallel", "--shares", "3");
        folder.Write("shares.sh", script);

        (int exit, string told) = ShellForgeProcess.Run(bin, folder.Path, "sh", "shares.sh");

        Assert.True(exit == 1, told);
        Assert.Equal(OneRun(), Made(folder));
    }

    [SkippableFact]
    public void Shares_on_slurm_with_a_node_lost_in_the_middle_join_to_the_bytes_of_one_run()
    {
        Skip.IfNot(new[] { "slurmctld", "slurmd", "munged" }.All(program => ForeignRun.Find(program) is not null),
            "Slurm is not installed");
        Skip.IfNot(Environment.UserName == "root", "the daemons of Slurm are started as root here");
        using var folder = new TemporaryFolder();
        Lay(folder);
        string bin = ShellForgeProcess.Install(folder.Path);
        (_, string script) = CommandRun.Run(folder.Path, "sweep", "plan.yaml", "-o", "out", "--script", "slurm", "--shares", "4");

        // What a site changes: the nodes here have one processor each.
        folder.Write("job.sh", script.Replace("--cpus-per-task=2", "--cpus-per-task=1", StringComparison.Ordinal));
        string slurm = Path.Combine(Repository.At("tests", "ShellForge.EndToEnd.Tests"), "Sweeps", "slurm-two-nodes.sh");

        (int exit, string told) = ShellForgeProcess.Run(bin, folder.Path, "bash", slurm, folder.File("slurm"), folder.File("job.sh"),
            folder.File("out"));

        Skip.If(exit == 75, "Slurm does not start here: " + told);
        Assert.True(exit == 0, told);
        (exit, string joined) = CommandRun.Run(folder.Path, "sweep", "--merge", "out");
        Assert.True(exit == 1 && !joined.Contains("missing", StringComparison.Ordinal), joined + told);
        Assert.Matches("lost n2 while it ran [0-9]", told);
        Assert.Equal(OneRun(), Made(folder));
    }
}
