using System.Diagnostics;
using ShellForge.Cli.Sweeping;
using ShellForge.Sweep.Variants;

namespace ShellForge.Cli.Tests.Sweeping;

public class EngineShareTests
{
    [Theory]
    [InlineData("SLURM_ARRAY_TASK_ID=3 SLURM_ARRAY_TASK_COUNT=8", 3, 8)]
    [InlineData("SLURM_ARRAY_TASK_ID=14 SLURM_ARRAY_TASK_COUNT=3 SLURM_ARRAY_TASK_MIN=10 SLURM_ARRAY_TASK_STEP=2", 2, 3)]
    [InlineData("JOB_COMPLETION_INDEX=0 SHELLFORGE_SHARES=5", 0, 5)]
    [InlineData("AWS_BATCH_JOB_ARRAY_INDEX=4 AWS_BATCH_JOB_ARRAY_SIZE=5", 4, 5)]
    [InlineData("AWS_BATCH_JOB_ARRAY_INDEX=4 SHELLFORGE_SHARES=6", 4, 6)]
    [InlineData("SGE_TASK_ID=1 SGE_TASK_LAST=4", 0, 4)]
    [InlineData("SGE_TASK_ID=9 SGE_TASK_FIRST=3 SGE_TASK_LAST=9 SGE_TASK_STEPSIZE=3", 2, 3)]
    [InlineData("PARALLEL_SEQ=4 SHELLFORGE_SHARES=4", 3, 4)]
    public void An_engine_says_which_share_a_task_is(string variables, int index, int count)
    {
        Shard? shard = EngineShare.Read(Of(variables), out string from, out string? fault);

        Assert.Equal((new Shard(index, count), (string?)null), (shard, fault));
        Assert.Equal(variables.Split('=')[0], from);
    }

    [Theory]
    [InlineData("")]
    [InlineData("SGE_TASK_ID=undefined SGE_TASK_LAST=undefined")]
    [InlineData("PARALLEL_SEQ=7")]
    public void Without_an_array_there_are_no_shares(string variables)
    {
        Assert.Null(EngineShare.Read(Of(variables), out _, out string? fault));
        Assert.Null(fault);
    }

    [Theory]
    [InlineData("JOB_COMPLETION_INDEX=2")]
    [InlineData("SLURM_ARRAY_TASK_ID=8 SLURM_ARRAY_TASK_COUNT=8")]
    [InlineData("SLURM_ARRAY_TASK_ID=11 SLURM_ARRAY_TASK_COUNT=3 SLURM_ARRAY_TASK_MIN=10 SLURM_ARRAY_TASK_STEP=2")]
    [InlineData("PARALLEL_SEQ=9 SHELLFORGE_SHARES=4")]
    [InlineData("AWS_BATCH_JOB_ARRAY_INDEX=x AWS_BATCH_JOB_ARRAY_SIZE=5")]
    public void What_is_no_share_is_told_and_never_taken_for_all(string variables)
    {
        Assert.Null(EngineShare.Read(Of(variables), out _, out string? fault));
        Assert.Contains(EngineShare.CountVariable, fault, StringComparison.Ordinal);
    }

    [Fact]
    public void A_sweep_in_a_task_makes_its_share_and_a_merge_tells_what_is_missing_until_all_is_there()
    {
        using var bench = new Bench();
        File.WriteAllText(bench.Folder.File("buoy.yaml"), Bench.SmallBoard);
        File.WriteAllText(bench.Folder.File("plan.yaml"),
            "format: shellforge-plan/1\nboard: buoy.yaml\nvary: {power.brightness: [0.1, 0.2, 0.3]}\n");

        Assert.Equal(0,
            bench.RunWith("SLURM_ARRAY_TASK_ID=1 SLURM_ARRAY_TASK_COUNT=2", "sweep", "plan.yaml", "-o", "out", "--findings-only"));
        Assert.Contains("share 1/2 (by SLURM_ARRAY_TASK_ID): 1 variant, 1 made", bench.Out, StringComparison.Ordinal);
        Assert.False(File.Exists(bench.Folder.File("out/index.html")));

        Assert.Equal(1, bench.Run("sweep", "--merge", "out"));
        Assert.Equal(2, bench.Out.Split('\n').Count(line => line.StartsWith("missing: ", StringComparison.Ordinal)));

        Assert.Equal(0, bench.Run("sweep", "plan.yaml", "-o", "out", "--findings-only", "--shard", "0/2"));
        Assert.Equal(0, bench.Run("sweep", "--merge", "out"));
        Assert.Equal(4, File.ReadAllLines(bench.Folder.File("out/index.csv")).Length);
        Assert.Equal(3, bench.Run("sweep", "--merge", "nowhere"));
        Assert.Equal(2, bench.Run("sweep"));
        Assert.Equal(2, bench.RunWith("JOB_COMPLETION_INDEX=1", "sweep", "plan.yaml"));
    }

    [Theory]
    [InlineData("slurm", "--array=0-4")]
    [InlineData("kubernetes", "completions: 5")]
    [InlineData("parallel", "seq 0 4 | parallel")]
    public void A_script_names_its_shares_plan_and_folder(string engine, string shares)
    {
        using var bench = new Bench();
        File.WriteAllText(bench.Folder.File("buoy.yaml"), Bench.SmallBoard);
        File.WriteAllText(bench.Folder.File("plan.yaml"),
            "format: shellforge-plan/1\nboard: buoy.yaml\nvary: {power.brightness: [0.1, 0.2, 0.3]}\n");

        Assert.Equal(0, bench.Run("sweep", "plan.yaml", "-o", "out", "--script", engine, "--shares", "5"));

        Assert.Contains(shares, bench.Out, StringComparison.Ordinal);
        Assert.Contains("plan.yaml", bench.Out, StringComparison.Ordinal);
        Assert.Contains("--merge", bench.Out, StringComparison.Ordinal);
        Assert.False(Directory.Exists(bench.Folder.File("out")));
    }

    // Names come with the files of strangers, and scripts are run.
    [SkippableTheory]
    [InlineData("slurm")]
    [InlineData("parallel")]
    public void A_name_in_a_script_stays_a_name(string engine)
    {
        Skip.If(OperatingSystem.IsWindows(), "a shell runs the script");
        const string name = "a b'; touch run $(touch run) `touch run` \"x\".yaml";
        using var bench = new Bench();
        File.WriteAllText(bench.Folder.File("buoy.yaml"), Bench.SmallBoard);
        File.WriteAllText(bench.Folder.File(name), "format: shellforge-plan/1\nboard: buoy.yaml\nvary: {power.brightness: [0.1, 0.2]}\n");
        Assert.Equal(0, bench.Run("sweep", name, "-o", "out; touch run", "--script", engine, "--shares", "1"));

        // Programs of these names that write down what they are given, and a stand-in for what hands a line to a shell.
        string given = bench.Folder.File("given");
        Program("shellforge", $"#!/bin/sh\nprintf '%s\\n' \"$@\" >> '{given}'\n");
        Program("parallel", "#!/bin/sh\nwhile [ \"$1\" != --quote ]; do shift; done\nshift\nexec \"$@\"\n");
        string script = bench.Folder.Write("job.sh", bench.Out);
        var start = new ProcessStartInfo("/bin/sh", [script]) { WorkingDirectory = bench.Folder.Path };
        start.Environment["PATH"] = $"{bench.Folder.File("bin")}:/usr/bin:/bin";
        using Process run = Process.Start(start)!;
        run.WaitForExit();

        Assert.False(File.Exists(bench.Folder.File("run")));
        string[] words = File.ReadAllLines(given);
        Assert.Equal(["sweep", name, "-o", "out; touch run"], words[..4]);

        void Program(string word, string text)
        {
            string path = bench.Folder.Write($"bin/{word}", text);
            if (!OperatingSystem.IsWindows())
            {
                File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
            }
        }
    }

    [Theory]
    [InlineData("slurm")]
    [InlineData("kubernetes")]
    [InlineData("parallel")]
    public void A_name_that_would_end_a_line_of_a_script_is_refused(string engine)
    {
        using var bench = new Bench();
        File.WriteAllText(bench.Folder.File("buoy.yaml"), Bench.SmallBoard);
        File.WriteAllText(bench.Folder.File("plan.yaml"),
            "format: shellforge-plan/1\nboard: buoy.yaml\nvary: {power.brightness: [0.1, 0.2]}\n");
        Assert.Equal(2, bench.Run("sweep", "plan.yaml", "-o", "out\ntouch run", "--script", engine, "--shares", "2"));
        Assert.Equal(2, bench.Run("sweep", "plan.yaml", "-o", "{}", "--script", engine, "--shares", "2"));
        Assert.Contains("rename it, without braces and line ends", bench.Err, StringComparison.Ordinal);
        Assert.Equal("", bench.Out);
    }

    private static Func<string, string?> Of(string variables)
    {
        var all = variables.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(pair => pair.Split('=')).ToDictionary(pair => pair[0],
            pair => pair[1]);
        return name => all.GetValueOrDefault(name);
    }
}
