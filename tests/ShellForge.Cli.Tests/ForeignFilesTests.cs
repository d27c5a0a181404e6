using ShellForge.Testing;

namespace ShellForge.Cli.Tests;

/// <summary>Files that somebody else put where the command reads: no files at all, or reports that were edited.</summary>
public class ForeignFilesTests
{
    private const string Report =
        """{"format":"shellforge-report/1","name":"Buoy","verdict":"print","resolved":{},"findings":[],"parts":[PARTS],"shopping":[]}""";

    [SkippableTheory]
    [InlineData("check", "pipe.yaml")]
    [InlineData("check", "zero.yaml")]
    [InlineData("inspect", "pipe.yaml")]
    [InlineData("inspect", "zero.yaml")]
    [InlineData("import", "pipe.yaml", "--json")]
    [InlineData("calibrate", "pipe.yaml")]
    [InlineData("sweep", "zero.yaml", "-o", "f")]
    public void A_pipe_or_a_device_in_a_files_place_is_told_at_once(params string[] args)
    {
        using Bench bench = WithPipeAndDevice("pipe.yaml", "zero.yaml");

        int exit = Within(10, () => bench.Run(args));

        Assert.True(exit is (int)ExitCode.BadInput or (int)ExitCode.FileTrouble or 1, $"{exit}: {bench.Err}{bench.Out}");
        Assert.DoesNotContain("defect of the program", bench.Err, StringComparison.Ordinal);
    }

    [SkippableTheory]
    [InlineData("a/report.json", "b/report.json")]
    [InlineData("a/tub.stl", "b/tub.stl")]
    public void Reports_and_parts_that_are_pipes_or_devices_are_not_read(string pipe, string device)
    {
        using Bench bench = WithPipeAndDevice(pipe, device);
        foreach (string folder in new[] { "a", "b" }.Where(_ => !pipe.EndsWith("json", StringComparison.Ordinal)))
        {
            bench.Folder.Write($"{folder}/report.json", Report.Replace("PARTS", """{"name":"tub","file":"tub.stl","size_mm":[1,2,3]}"""));
        }

        int exit = Within(10, () => bench.Run("compare", "a", "b"));

        Assert.Equal(pipe.EndsWith("json", StringComparison.Ordinal) ? (int)ExitCode.FileTrouble : 0, exit);
    }

    [SkippableFact]
    public void A_profile_that_is_a_pipe_keeps_nobody_waiting()
    {
        using Bench bench = WithPipeAndDevice("profiles/z.yaml", "other");
        bench.Folder.Write("board.yaml", Bench.SmallBoard);

        Assert.Equal((int)ExitCode.BadInput, Within(20, () => bench.Run("check", "board.yaml")));
    }

    [Theory]
    [InlineData("""{"name":"tub","size_mm":[1]},{"name":"tub","size_mm":[2]}""")]
    [InlineData("""{"name":"\ud800"}""")]
    [InlineData("""{"name":"tub","file":"\ud800"}""")]
    [InlineData("7")]
    public void An_edited_report_in_the_folder_is_no_defect_of_the_program(string parts)
    {
        using var bench = new Bench();
        bench.Folder.Write("board.yaml", Bench.SmallBoard);
        bench.Folder.Write("housing/report.json", Report.Replace("PARTS", parts));

        int exit = bench.Run("make", "board.yaml", "-o", "housing", "--formats", "stl");

        Assert.True(exit is 0 or 1 or 2, $"{exit}: {bench.Err}");
    }

    [Theory]
    [InlineData("""{"format":"\ud800"}""")]
    [InlineData("""{"format":"shellforge-report/1","resolved":{"a":{"value":"1"},"a":{"value":"2"}}}""")]
    public void A_report_with_broken_text_or_two_of_one_name_is_compared_or_refused(string report)
    {
        using var bench = new Bench();
        bench.Folder.Write("a/report.json", report);
        bench.Folder.Write("b/report.json", report);

        Assert.NotEqual((int)ExitCode.ProgramDefect, bench.Run("compare", "a", "b"));
    }

    private static Bench WithPipeAndDevice(string pipe, string device)
    {
        Skip.If(OperatingSystem.IsWindows(), "pipes with a name are those of Unix");
        var bench = new Bench();
        foreach (string each in new[] { pipe, device })
        {
            Directory.CreateDirectory(Path.GetDirectoryName(bench.Folder.File(each))!);
        }

        Assert.Equal(0, ForeignRun.Of("mkfifo", bench.Folder.Path, [pipe]).Exit);
        File.CreateSymbolicLink(bench.Folder.File(device), "/dev/zero");
        return bench;
    }

    private static int Within(int seconds, Func<int> work)
    {
        var run = Task.Run(work);
        Assert.True(run.Wait(TimeSpan.FromSeconds(seconds)), "it waits for something that never comes");
        return run.Result;
    }
}
