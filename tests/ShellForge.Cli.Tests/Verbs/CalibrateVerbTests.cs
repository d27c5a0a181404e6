namespace ShellForge.Cli.Tests.Verbs;

public sealed class CalibrateVerbTests
{
    internal const string Answers =
        """
        format: shellforge-answers/1
        printer: fdm-0.4
        filament: petg-black
        coupons:
          - kind: lid-fit
            answers:
              tight: .25
              fits: .3
              loose: .4
              turns: 0.50

        """;

    [Fact]
    public void Answers_in_a_file_become_the_users_profile_with_date_coupon_and_raw_answers()
    {
        using var bench = new Bench();
        File.WriteAllText(bench.Folder.File("answers.yaml"), Answers);
        Assert.Equal(0, bench.Run("calibrate", "answers.yaml"));
        Assert.Contains("gap per side of a lid's lip 0.3 mm", bench.Out, StringComparison.Ordinal);
        Assert.Empty(bench.Err);
        string written = File.ReadAllText(bench.Folder.File("config/profiles/measured-fdm-0.4+petg-black.yaml"));
        Assert.Contains("lip-fit: [0.3, \"measured 2026-11-30, coupon lid-fit\"]", written, StringComparison.Ordinal);
        Assert.Contains("lid-fit: \"2026-11-30: tight .25, fits .3, loose .4, turns 0.50\"", written, StringComparison.Ordinal);
        Assert.Equal(0, bench.Run("profiles", "fdm-0.4+petg-black"));
        Assert.Contains("measured 2026-11-30, coupon lid-fit", bench.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_empty_in_the_file_is_asked_and_a_wrong_answer_is_asked_again()
    {
        using var bench = new Bench { Typed = ".31\n0,30\n.50\n" };
        File.WriteAllText(bench.Folder.File("answers.yaml"),
            Answers.Replace("fits: .3", "fits:", StringComparison.Ordinal).Replace("turns: 0.50", "", StringComparison.Ordinal));
        Assert.Equal(0, bench.Run("calibrate", "answers.yaml"));
        Assert.Contains("goes in under light pressure of one thumb", bench.Out, StringComparison.Ordinal);
        Assert.Contains("'.31' is no figure of this coupon", bench.Out, StringComparison.Ordinal);
        Assert.Contains("gap per side of a lid's lip 0.3 mm", bench.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_coupon_that_was_not_tried_is_left_out_and_sets_nothing()
    {
        using var bench = new Bench { Typed = "skip\n" };
        File.WriteAllText(bench.Folder.File("answers.yaml"),
            Answers + "  - kind: diffuser-steps\n    filament: petg-white\n    answers: {open: 1000}\n");
        Assert.Equal(0, bench.Run("calibrate", "answers.yaml"));
        Assert.Contains("'skip' leaves it out", bench.Out, StringComparison.Ordinal);
        Assert.Contains("diffuser-steps: left out, nothing of it is set", bench.Out, StringComparison.Ordinal);
        Assert.Equal(["measured-fdm-0.4+petg-black.yaml"],
            Directory.GetFiles(bench.Folder.File("config/profiles")).Select(Path.GetFileName));
    }

    [Theory]
    [InlineData("fits: .3", "fits: .2", "answers.yaml:8:13: lid-fit, fits: 0.20 can't fit while 0.25 is too tight")]
    [InlineData("loose: .4", "loose: .2", "answers.yaml:9:14: lid-fit, loose: 0.25 can't be too tight while 0.20 is too loose")]
    [InlineData("turns: 0.50", "turns: .05",
        "answers.yaml:10:14: lid-fit, turns: the lid can't turn freely at 0.05 and need pressure at 0.30")]
    [InlineData("fits: .3", "fits: .33", "answers.yaml:8:13: lid-fit, fits: '.33' is no figure of this coupon")]
    [InlineData("turns: 0.50", "turn: 0.50", "answers.yaml:10:13: lid-fit asks no question 'turn'")]
    [InlineData("kind: lid-fit", "kind: lid", "there is no coupon 'lid'")]
    [InlineData("turns: 0.50", "turns:", "lid-fit, turns has no answer")]
    public void A_wrong_answer_is_told_with_its_place_and_nothing_is_written(string right, string wrong, string told)
    {
        using var bench = new Bench();
        File.WriteAllText(bench.Folder.File("answers.yaml"), Answers.Replace(right, wrong, StringComparison.Ordinal));
        Assert.Equal(2, bench.Run("calibrate", "answers.yaml"));
        Assert.Contains(told, bench.Err, StringComparison.Ordinal);
        Assert.False(Directory.Exists(bench.Folder.File("config")));
    }

    [Fact]
    public void A_board_is_shown_before_and_after_and_resolved_says_what_was_measured()
    {
        using var bench = new Bench();
        File.WriteAllText(bench.Folder.File("answers.yaml"), Answers);
        File.WriteAllText(bench.Folder.File("board.yaml"), Bench.SmallBoard);
        Assert.Equal(0, bench.Run("calibrate", "answers.yaml", "--board", "board.yaml"));
        string told = bench.Out.ReplaceLineEndings(" ");
        Assert.Contains("cover.lip.gap 0.22 -> 0.32: lip fit 0.3 (measured 2026-11-30, coupon lid-fit)", told, StringComparison.Ordinal);
        Assert.Contains("print.measured.lip-fit new: 0.3", told, StringComparison.Ordinal);
        Assert.Contains("its bytes changed: print it again", told, StringComparison.Ordinal);
        Assert.True(File.Exists(bench.Folder.File("profiles/measured-fdm-0.4+petg-black.yaml")));
    }

    [Fact]
    public void No_step_fits_leads_to_the_next_coupon()
    {
        using var bench = new Bench();
        File.WriteAllText(bench.Folder.File("answers.yaml"),
            """
            format: shellforge-answers/1
            printer: fdm-0.4
            filament: petg-black
            coupons:
              - kind: insert-holes
                insert: m2.5x4-od4.6
                answers: {tight: 4.25, fits: none, loose: none}

            """);
        Assert.Equal(0, bench.Run("calibrate", "answers.yaml"));
        Assert.Contains(
            "no step fits. Print the next one: shellforge coupon insert-holes --printer fdm-0.4 --filament petg-black --insert "
                + "m2.5x4-od4.6 --around 4.42", bench.Out, StringComparison.Ordinal);
        Assert.False(Directory.Exists(bench.Folder.File("config/profiles")));
    }
}
