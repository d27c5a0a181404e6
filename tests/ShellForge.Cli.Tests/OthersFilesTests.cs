using ShellForge.Coupons.Calibrating;

namespace ShellForge.Cli.Tests;

/// <summary>Files of a person that lie where the command writes: none is lost in silence.</summary>
public class OthersFilesTests
{
    private static readonly string[] Edge =
    [
        "%FSLAX46Y46*%", "%MOMM*%", "%TF.FileFunction,Profile,NP*%", "%ADD10C,0.1*%", "D10*", "X0Y0D02*", "X30000000Y0D01*",
        "X30000000Y20000000D01*", "X0Y20000000D01*", "X0Y0D01*", "M02*",
    ];

    [Theory]
    [InlineData("plan.svg")]
    [InlineData("report.html")]
    [InlineData("report.json")]
    [InlineData("cover.stl")]
    public void Make_does_not_replace_what_no_earlier_run_has_written(string name)
    {
        using var bench = new Bench();
        bench.Folder.Write("board.yaml", Bench.SmallBoard);
        bench.Folder.Write(name, "mine");
        IReadOnlyDictionary<string, string> before = bench.Folder.Snapshot();

        Assert.Equal((int)ExitCode.BadInput, bench.Run("make", "board.yaml", "-o", ".", "--formats", "stl"));

        Assert.Equal(before, bench.Folder.Snapshot());
        Assert.Contains(name, bench.Err, StringComparison.Ordinal);
        Assert.Contains("Name another folder with -o", bench.Err, StringComparison.Ordinal);
    }

    [Fact]
    public void Make_does_not_replace_its_own_board_file_even_where_it_has_made_before()
    {
        using var bench = new Bench();
        bench.Folder.Write("board.yaml", Bench.SmallBoard);
        Assert.Equal(0, bench.Run("make", "board.yaml", "-q", "-o", ".", "--formats", "stl"));
        string board = bench.Folder.Write("print.txt", Bench.SmallBoard);

        Assert.Equal((int)ExitCode.BadInput, bench.Run("make", "print.txt", "-o", ".", "--formats", "stl"));

        Assert.Equal(Bench.SmallBoard, File.ReadAllText(board));
        Assert.StartsWith("shellforge: print.txt in ", bench.Err, StringComparison.Ordinal);
    }

    [Fact]
    public void Make_writes_again_into_its_folder_in_other_formats_another_version_or_after_it_was_cut_short()
    {
        using var bench = new Bench();
        bench.Folder.Write("board.yaml", Bench.SmallBoard);
        bench.Folder.Write("notes.txt", "mine");
        Assert.Equal(0, bench.Run("make", "board.yaml", "-q", "-o", ".", "--formats", "stl"));
        Assert.Equal(0, bench.Run("make", "board.yaml", "-q", "-o", ".", "--set", "housing.walls=4"));

        // A run that was cut short has no report, and of another version's only the format is known.
        File.Delete(bench.Folder.File("report.json"));
        Assert.Equal(0, bench.Run("make", "board.yaml", "-q", "-o", ".", "--set", "housing.walls=4"));
        bench.Folder.Write("report.json", """{"format": "shellforge-report/7"}""");
        Assert.Equal(0, bench.Run("make", "board.yaml", "-q", "-o", ".", "--formats", "stl,csv"));
        Assert.Equal("mine", File.ReadAllText(bench.Folder.File("notes.txt")));
    }

    [Fact]
    public void Import_keeps_every_earlier_board_file_and_picture()
    {
        using var bench = new Bench();
        bench.Folder.Write("edge.gbr", string.Join('\n', Edge));
        bench.Folder.Write("board.svg", "my picture");
        foreach (string work in new[] { "first", "second", "third" })
        {
            bench.Folder.Write("board.yaml", work);
            Assert.Equal(0, bench.Run("import", "edge.gbr", "-o", "board.yaml"));
            Assert.Equal(0, bench.Run("import", "edge.gbr", "-o", "board.yaml"));
        }

        Assert.Equal("first", File.ReadAllText(bench.Folder.File("board.yaml~")));
        Assert.Equal("second", File.ReadAllText(bench.Folder.File("board.yaml~2")));
        Assert.Equal("third", File.ReadAllText(bench.Folder.File("board.yaml~3")));
        Assert.Equal("my picture", File.ReadAllText(bench.Folder.File("board.svg~")));
        Assert.False(File.Exists(bench.Folder.File("board.yaml~4")));
    }

    [Fact]
    public void Import_takes_no_name_that_its_picture_would_have()
    {
        using var bench = new Bench();
        bench.Folder.Write("edge.gbr", string.Join('\n', Edge));

        Assert.Equal((int)ExitCode.BadInput, bench.Run("import", "edge.gbr", "-o", "board2.svg"));

        Assert.Contains("name a board file, such as board.yaml", bench.Err, StringComparison.Ordinal);
        Assert.False(File.Exists(bench.Folder.File("board2.svg")));
    }

    [Fact]
    public void A_sweep_does_not_replace_an_index_of_somebody_else()
    {
        using var bench = new Bench();
        bench.Folder.Write("board.yaml", Bench.SmallBoard);
        bench.Folder.Write("plan.yaml", Bench.SlimPlan);
        bench.Folder.Write("index.html", "my page");
        IReadOnlyDictionary<string, string> before = bench.Folder.Snapshot();

        Assert.Equal((int)ExitCode.BadInput, bench.Run("sweep", "plan.yaml", "-o", ".", "--findings-only"));

        Assert.Equal(before, bench.Folder.Snapshot());
        Assert.StartsWith("shellforge: index.html in ", bench.Err, StringComparison.Ordinal);
    }

    [Fact]
    public void A_sweep_writes_its_index_again_also_where_its_state_was_removed()
    {
        using var bench = new Bench();
        bench.Folder.Write("board.yaml", Bench.SmallBoard);
        bench.Folder.Write("plan.yaml", Bench.SlimPlan);
        Assert.Equal(0, bench.Run("sweep", "plan.yaml", "-o", "f", "--findings-only", "-q"));
        Assert.Equal(0, bench.Run("sweep", "plan.yaml", "-o", "f", "--findings-only", "-q"));
        Directory.Delete(bench.Folder.File("f/sweep-state"), recursive: true);

        Assert.Equal(0, bench.Run("sweep", "plan.yaml", "-o", "f", "--findings-only", "-q"));
    }

    [Fact]
    public void Measured_profiles_keep_what_was_added_by_hand_in_a_copy()
    {
        using var bench = new Bench();
        bench.Folder.Write("answers.yaml", Verbs.CalibrateVerbTests.Answers);
        Assert.Equal(0, bench.Run("calibrate", "answers.yaml"));
        string file = bench.Folder.File("config/profiles/measured-fdm-0.4+petg-black.yaml");
        string mine = File.ReadAllText(file) + "# mine\n";
        File.WriteAllText(file, mine);

        Assert.Equal(0, bench.Run("calibrate", "answers.yaml"));

        Assert.Equal(mine, File.ReadAllText(file + "~"));
    }

    [Theory]
    [InlineData("shellforge-answers/1")]
    [InlineData("shellforge-answers/2")]
    public void Coupons_of_any_version_are_made_again_and_what_was_answered_is_kept(string format)
    {
        using var bench = new Bench();
        Assert.Equal(0, bench.Run("coupon", "thin-walls", "-q"));
        string answers = bench.Folder.File("coupon/answers.yaml");
        string mine = File.ReadAllText(answers).Replace("shellforge-answers/1", format, StringComparison.Ordinal) + "# mine\n";
        File.WriteAllText(answers, mine);

        Assert.Equal(0, bench.Run("coupon", "overhangs", "-q"));

        Assert.Equal(mine, File.ReadAllText(answers + "~"));
    }

    [Fact]
    public void Names_that_differ_in_a_letter_no_file_may_have_give_two_files()
    {
        Assert.NotEqual(MeasuredProfiles.FileName("pl-a"), MeasuredProfiles.FileName("pl/a"));
        Assert.NotEqual(MeasuredProfiles.FileName("pl a"), MeasuredProfiles.FileName("pl/a"));
        Assert.Equal("fdm-0.4+petg-black", MeasuredProfiles.FileName("fdm-0.4+petg-black"));
    }
}
