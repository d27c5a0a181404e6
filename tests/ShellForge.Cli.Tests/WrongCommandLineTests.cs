using System.CommandLine;

namespace ShellForge.Cli.Tests;

/// <summary>
/// Whatever is written on the command line, and whatever lies in a file that is named there, is told with a status that the help knows.
/// </summary>
public sealed class WrongCommandLineTests
{
    private static readonly string[] Odd = ["abc", "", "-1", "99999999999999999999", "1e400", "NaN", "=", "a=b", "housing=", "é\u0007",
        "--", "../..", "/proc/x", ",", "1,", "{"];

    private static readonly string[] Files = ["board.yaml", "tub.stl", "empty", "text.txt", "folder", "missing"];

    [Fact]
    public void No_value_of_any_option_and_no_kind_of_file_is_a_defect_of_the_program()
    {
        using var bench = Prepared();
        RootCommand root = ShellForgeCommand.Root(new Workbench { Out = TextWriter.Null, Err = TextWriter.Null, Folder = "/" });
        int ran = 0;
        foreach (Command verb in root.Subcommands)
        {
            foreach (Option option in verb.Options.Where(option => option is not Option<bool>))
            {
                foreach (string value in Odd)
                {
                    // A file that is missing: what an option's value is must be told, or the file, never more.
                    Told(bench, verb.Name, "missing", option.Name, value);
                    ran++;
                }

                Told(bench, verb.Name, "missing", option.Name);
            }

            foreach (string file in Files.Where(
                file => verb.Name is not ("view" or "new") && !(verb.Name == "make" && file == "board.yaml")))
            {
                Told(bench, [verb.Name, file, .. verb.Options.Any(option => option.Name == "--output") ? new[] { "-o", "out" } : []]);
                ran++;
            }

            foreach (string value in Odd)
            {
                Told(bench, verb.Name == "new" ? [verb.Name, value, value] : [verb.Name, value]);
                ran++;
            }

            Told(bench, verb.Name, "missing", "missing", "--no-such-option");
        }

        Assert.True(ran > 200, $"{ran}");
    }

    [Theory]
    [InlineData("chek board.yaml", "did you mean check?")]
    [InlineData("make board.yaml --fromats stl", "did you mean --formats?")]
    [InlineData("make", "make needs a board file")]
    [InlineData("view board.yaml --port abc", "a port is a number from 0 to 65535, not 'abc'")]
    [InlineData("view board.yaml --port 70000", "not '70000'")]
    [InlineData("sweep board.yaml --jobs abc", "a number from 1 to")]
    [InlineData("inspect board.yaml", "board.yaml: this is a board file; inspect takes STL or 3MF")]
    [InlineData("inspect text.txt", "text.txt: this is a text, and no mesh")]
    [InlineData("check tub.stl", "tub.stl: this is an STL file, not a board file; 'inspect' takes it")]
    public void A_near_miss_is_told_with_what_is_right(string line, string told)
    {
        using var bench = Prepared();

        int exit = bench.Run(line.Length == 0 ? [] : line.Split(' '));

        Assert.Equal((int)ExitCode.BadInput, exit);
        Assert.Contains(told, bench.Err, StringComparison.Ordinal);
        Assert.Empty(bench.Out);
    }

    [Theory]
    [InlineData("screw: pann",
        "expected pan, cap, button, countersunk, or the name of a screw (`profiles` lists them); did you mean 'pan'?")]
    [InlineData("insert: m3", "expected one of m3x3-od4.2, m3x4-od4.2")]
    [InlineData("closure: snapp", "did you mean 'snap'?")]
    public void A_near_miss_in_the_board_file_is_told_with_what_is_right(string line, string told)
    {
        using var bench = new Bench();
        bench.Folder.Write("board.yaml", Bench.SmallBoard.Replace("insert: m2x3-od3.6", line, StringComparison.Ordinal).Replace(
            line.StartsWith("closure", StringComparison.Ordinal) ? "  closure: snap\n" : "\t", "", StringComparison.Ordinal));

        Assert.Equal((int)ExitCode.BadInput, bench.Run("check", "board.yaml"));
        Assert.Contains(told, bench.Err, StringComparison.Ordinal);
    }

    [Fact]
    public void An_LED_named_by_more_than_its_package_is_told_the_package()
    {
        using var bench = new Bench();
        bench.Folder.Write("board.yaml", Bench.SmallBoard.Replace("\"5050\"", "led-5050-rgb", StringComparison.Ordinal));

        Assert.Equal((int)ExitCode.BadInput, bench.Run("check", "board.yaml"));
        Assert.Contains("did you mean '5050'?", bench.Err, StringComparison.Ordinal);
    }

    private static Bench Prepared()
    {
        var bench = new Bench();
        bench.Folder.Write("board.yaml", Bench.SmallBoard);
        bench.Folder.Write("empty", "");
        bench.Folder.Write("text.txt", "Not a mesh, not a board.\n");
        Directory.CreateDirectory(bench.Folder.File("folder"));
        byte[] stl = new byte[84 + 50];
        stl[80] = 1;
        File.WriteAllBytes(bench.Folder.File("tub.stl"), stl);
        return bench;
    }

    private static void Told(Bench bench, params string[] args)
    {
        int exit = bench.Run(args);
        Assert.True(exit is >= 0 and <= 3, $"shellforge {string.Join(' ', args)}: status {exit}\n{bench.Err}");
        Assert.DoesNotContain("   at ", bench.Err, StringComparison.Ordinal);
    }
}
