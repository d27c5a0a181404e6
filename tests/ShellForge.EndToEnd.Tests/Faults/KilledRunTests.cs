using System.Diagnostics;
using System.Globalization;
using ShellForge.Cli.Writing;

namespace ShellForge.EndToEnd.Tests.Faults;

/// <summary>
/// Runs that end in the middle. A few here; as many as SHELLFORGE_KILLS says, for the figure that the manual states.
/// </summary>
public sealed class KilledRunTests : IDisposable
{
    private const int UsualKills = 6;

    private readonly FaultyMachine _machine = new();

    public void Dispose() => _machine.Dispose();

    [SkippableFact]
    public void Killed_at_any_moment_each_file_is_the_old_or_the_new_one_and_the_next_run_tidies_up()
    {
        Skip.If(OperatingSystem.IsWindows(), "the command is started by a shell script");
        Dictionary<string, byte[]> before = _machine.Made("one.yaml", "one");
        var watch = Stopwatch.StartNew();
        Dictionary<string, byte[]> after = _machine.Made("other.yaml", "other");
        double whole = watch.Elapsed.TotalSeconds;
        int kills = Environment.GetEnvironmentVariable("SHELLFORGE_KILLS") is { } said ? int.Parse(said, CultureInfo.InvariantCulture)
            : UsualKills;
        var random = new Random(5);
        int cut = 0;
        for (int i = 0; i < kills; i++)
        {
            string folder = $"killed-{i}";
            Directory.CreateDirectory(_machine.At(folder));
            foreach ((string name, byte[] content) in before)
            {
                File.WriteAllBytes(Path.Combine(_machine.At(folder), name), content);
            }

            // Half of them while files are written, which is short and comes last.
            double moment = whole * (i % 2 == 0 ? random.NextDouble() : 0.8 + (0.25 * random.NextDouble()));
            using (Process run = _machine.Start("make", "other.yaml", "-q", "-o", folder))
            {
                Thread.Sleep(TimeSpan.FromSeconds(moment));
                run.Kill(entireProcessTree: true);
                run.WaitForExit();
                cut += run.ExitCode == 0 ? 0 : 1;

                // The machine was busier when the first was timed.
                whole *= run.ExitCode == 0 ? 0.75 : 1;
            }

            Dictionary<string, byte[]> left = _machine.Files(folder);
            Assert.All(left, file => Assert.True(
                (before.TryGetValue(file.Key, out byte[]? old) && old.AsSpan().SequenceEqual(file.Value))
                    || (after.TryGetValue(file.Key, out byte[]? now) && now.AsSpan().SequenceEqual(file.Value)),
                $"{file.Key} is neither the old nor the new one"));
            Assert.All(before.Keys, name => Assert.True(left.ContainsKey(name) || !after.ContainsKey(name), $"{name} is lost"));
            if (left["report.json"].AsSpan().SequenceEqual(after["report.json"]))
            {
                Assert.All(
                    after, file => Assert.True(left[file.Key].AsSpan().SequenceEqual(file.Value), $"{file.Key} is older than its report"));
            }
        }

        Assert.True(cut > 0, $"none of {kills} runs was cut");
        string last = $"killed-{kills - 1}";
        _machine.Made("other.yaml", last);
        Assert.True(FaultyMachine.Same(after, _machine.Files(last)));
        Assert.DoesNotContain(Directory.GetFiles(_machine.At(last)), path => path.EndsWith(".part", StringComparison.Ordinal));
    }

    [SkippableTheory]
    [InlineData("INT")]
    [InlineData("TERM")]
    public void Asked_to_end_it_ends_soon_and_leaves_the_folder_as_it_was(string signal)
    {
        Skip.If(OperatingSystem.IsWindows(), "signals are those of Unix");
        Dictionary<string, byte[]> before = _machine.Made("one.yaml", "kept");
        using Process run = _machine.Start("make", "other.yaml", "-o", "kept");
        Thread.Sleep(300);
        Process.Start("kill", [$"-{signal}", run.Id.ToString(CultureInfo.InvariantCulture)]).WaitForExit();

        Assert.True(run.WaitForExit(TimeSpan.FromSeconds(20)), "it goes on");
        if (run.ExitCode != 0)
        {
            Assert.Equal(130, run.ExitCode);
            Assert.True(FaultyMachine.Same(before, _machine.Files("kept")));
        }

        Assert.DoesNotContain(Directory.GetFiles(_machine.At("kept")), path => path.EndsWith(".part", StringComparison.Ordinal));
    }

    [SkippableTheory]
    [InlineData(1)]
    [InlineData(2)]
    public void Asked_to_end_it_ends_though_it_waits_for_what_does_not_come(int signals)
    {
        Skip.If(OperatingSystem.IsWindows(), "signals are those of Unix");
        Dictionary<string, byte[]> before = _machine.Made("one.yaml", "held");
        using FolderTurn turn = FolderTurn.Of(_machine.At("held"));
        using Process run = _machine.Start("make", "other.yaml", "-q", "-o", "held");
        SpinWait.SpinUntil(() => Directory.GetFiles(_machine.At("held"), ".report.json.*.part").Length > 0, TimeSpan.FromSeconds(60));
        Thread.Sleep(200);
        var waited = Stopwatch.StartNew();
        for (int i = 0; i < signals; i++)
        {
            Process.Start("kill", ["-INT", run.Id.ToString(CultureInfo.InvariantCulture)]).WaitForExit();
            Thread.Sleep(200);
        }

        // It would wait for its turn for half a minute.
        Assert.True(run.WaitForExit(TimeSpan.FromSeconds(15)), "it goes on");
        Assert.Equal(130, run.ExitCode);
        Assert.True(signals == 1 || waited.Elapsed < TimeSpan.FromSeconds(4), $"asked twice it took {waited.Elapsed}");
        Assert.True(FaultyMachine.Same(before, _machine.Files("held")));
    }

    [SkippableFact]
    public void Two_runs_into_one_folder_leave_the_files_of_one_of_them()
    {
        Skip.If(OperatingSystem.IsWindows(), "the command is started by a shell script");
        Dictionary<string, byte[]> one = _machine.Made("one.yaml", "one");
        Dictionary<string, byte[]> other = _machine.Made("other.yaml", "other");
        for (int i = 0; i < 2; i++)
        {
            using Process first = _machine.Start("make", "one.yaml", "-q", "-o", "both");
            using Process second = _machine.Start("make", "other.yaml", "-q", "-o", "both");
            first.WaitForExit();
            second.WaitForExit();

            Assert.Equal((0, 0), (first.ExitCode, second.ExitCode));
            Dictionary<string, byte[]> both = _machine.Files("both");
            Assert.True(FaultyMachine.Same(one, both) || FaultyMachine.Same(other, both), "files of both runs stand side by side");
            Assert.Equal(both.Count, Directory.GetFiles(_machine.At("both")).Length);
        }
    }
}
