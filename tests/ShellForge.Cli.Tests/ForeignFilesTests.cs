using System.Text.Json;
using System.Text.RegularExpressions;
using ShellForge.Output.Words;
using ShellForge.Testing;

namespace ShellForge.Cli.Tests;

/// <summary>Files that somebody else put where the command reads: no files at all, or reports that were edited.</summary>
public class ForeignFilesTests
{
    private const string Report =
        """{"format":"shellforge-report/1","name":"Buoy","verdict":"print","resolved":{},"findings":[],"parts":[PARTS],"shopping":[]}""";

    // Clears the screen, names the window, turns the line round.
    private static string Hostile { get; } = Report
        .Replace("PARTS", """{"name":"\u001b[2J\u001b]0;x\u0007\u009b2J\u202eevil\u2066","size_mm":[1],"mass_g":3}""")
        .Replace("\"resolved\":{}", """ "resolved":{"\u001b[2Ja\u202eevil":{"value":"\u001b[2J","from":"\r","why":"\r\u001b[2J"}}""")
        .Replace("\"findings\":[]", """ "findings":[{"severity":"stop","rule":"\u001b[2J","subject":"\u202ex","message":"\u001b"}]""");

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
        bool areReports = pipe.EndsWith("json", StringComparison.Ordinal);
        if (!areReports)
        {
            string report = Report.Replace("PARTS", """{"name":"tub","file":"tub.stl","size_mm":[1,2,3]}""");
            bench.Folder.Write("a/report.json", report);
            bench.Folder.Write("b/report.json", report);
        }

        int exit = Within(10, () => bench.Run("compare", "a", "b"));

        Assert.Equal(areReports ? (int)ExitCode.FileTrouble : 0, exit);
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

    [SkippableTheory]
    [InlineData("a$(touch x)b")]
    [InlineData("it's `touch x`; touch x \"$HOME\"")]
    [InlineData("$(touch${IFS}x)")]
    [InlineData("plain/name-1.2")]
    public void A_name_in_a_command_to_copy_is_one_word_that_runs_nothing(string name)
    {
        Skip.If(OperatingSystem.IsWindows(), "asks a shell of Unix");
        using var bench = new Bench();
        string inner = $"printf %s {ShellWord.Of(name)}";

        Assert.Equal(name, ForeignRun.Of("/bin/sh", bench.Folder.Path, ["-c", inner]).Told);
        Assert.Equal(name, ForeignRun.Of("/bin/sh", bench.Folder.Path, ["-c", $"sh -c {ShellWord.Of(inner)}"]).Told);
        Assert.Empty(Directory.GetFiles(bench.Folder.Path));
    }

    [SkippableFact]
    public void The_line_of_a_script_that_sends_it_runs_nothing_of_a_folders_name()
    {
        Skip.If(OperatingSystem.IsWindows(), "asks a shell of Unix");
        using var bench = new Bench();
        bench.Folder.Write("board.yaml", Bench.SmallBoard);
        bench.Folder.Write("plan.yaml", Bench.SlimPlan);
        Assert.Equal(0, bench.Run("sweep", "plan.yaml", "-o", "a$(touch x)b", "--script", "slurm"));
        string line = bench.Out.Split('\n').Single(each => each.Contains("--wrap", StringComparison.Ordinal));
        string told = line[line.IndexOf("--wrap", StringComparison.Ordinal)..];

        Assert.Equal(0, ForeignRun.Of("/bin/sh", bench.Folder.Path, ["-c", $"printf %s {told} > /dev/null"]).Exit);
        Assert.False(File.Exists(bench.Folder.File("x")));
    }

    [Fact]
    public void A_file_whose_name_begins_with_an_at_sign_gives_no_arguments()
    {
        using var bench = new Bench();
        string list = bench.Folder.Write("z.txt", "--json\n-o\nevil.yaml\n");
        bench.Folder.Write("@z.txt", "nothing");

        Assert.Equal((int)ExitCode.FileTrouble, bench.Run("inspect", "@" + list));
        Assert.Contains("@", bench.Err, StringComparison.Ordinal);
        Assert.Equal((int)ExitCode.BadInput, bench.Run("inspect", "@z.txt"));
        Assert.Contains("@z.txt: this is a text", bench.Err, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void No_text_of_a_foreign_report_steers_the_terminal(bool coloured)
    {
        using var bench = new Bench { Coloured = coloured };
        bench.Folder.Write("a/report.json", Report.Replace("PARTS", ""));
        bench.Folder.Write("b/report.json", Hostile);

        Assert.Equal(0, bench.Run("compare", "a", "b"));

        Assert.Contains("evil", bench.Out, StringComparison.Ordinal);
        string withoutOurColour = Regex.Replace(bench.Out, "\u001b\\[[0-9;]*m", "");
        Assert.Equal(coloured, withoutOurColour.Length < bench.Out.Length);
        Assert.DoesNotContain(withoutOurColour, sign => (char.IsControl(sign) && sign != '\n') || sign is '\u202e' or '\u2066');
    }

    [Fact]
    public void Documents_for_machines_keep_foreign_texts_and_steer_no_terminal()
    {
        using var bench = new Bench();
        bench.Folder.Write("a/report.json", Report.Replace("PARTS", ""));
        bench.Folder.Write("b/report.json", Hostile);

        Assert.Equal(0, bench.Run("compare", "a", "b", "--json"));

        Assert.DoesNotContain(bench.Out, sign => (char.IsControl(sign) && sign != '\n') || sign is '\u202e' or '\u2066');
        Assert.Contains(Texts(bench.Json()), text => text.Contains("\u202eevil", StringComparison.Ordinal));
    }

    private static IEnumerable<string> Texts(JsonElement of) => of.ValueKind switch
    {
        JsonValueKind.Object => of.EnumerateObject().SelectMany(member => Texts(member.Value)),
        JsonValueKind.Array => of.EnumerateArray().SelectMany(Texts),
        JsonValueKind.String => [of.GetString()!],
        _ => [],
    };

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
