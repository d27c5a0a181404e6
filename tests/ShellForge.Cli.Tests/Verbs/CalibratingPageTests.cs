using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using ShellForge.Board.Yaml.Answers;
using ShellForge.Coupons.Answers;
using ShellForge.Coupons.Calibrating;
using ShellForge.Testing;

namespace ShellForge.Cli.Tests.Verbs;

/// <summary>
/// The page on calibrating, walked line by line as somebody does who has a printer and has read nothing else: each command runs, each file
/// it names is there, each line of output that it shows comes, and the housing in the end is planned with what was measured.
/// </summary>
public sealed partial class CalibratingPageTests
{
    private static readonly string Page = File.ReadAllText(Repository.At("src", "docs", "calibrating.md"));

    [GeneratedRegex(@"(?:^    |`)shellforge (?<words>[^`\n]+)", RegexOptions.Multiline)]
    private static partial Regex Command();

    [GeneratedRegex(@"!\[[^\]]*\]\((?<file>[^)]+)\)")]
    private static partial Regex Picture();

    [Fact]
    public void The_whole_way_is_walked_as_it_is_written()
    {
        using var bench = new Bench();
        bench.Folder.Write("board.yaml", File.ReadAllText(Repository.At("out-samples", "tide-lamp", "board.yaml"))
            .Replace("fdm-0.4-multi-filament", "fdm-0.4", StringComparison.Ordinal));
        string[][] commands = [.. Command().Matches(Page).Select(match => match.Groups["words"].Value.Trim().Split(' '))];
        Assert.Equal(["coupon", "coupon", "calibrate", "coupon", "make"], commands.Select(words => words[0]));

        // The plate for the board: what the page says of it.
        Assert.True(bench.Run(commands[0]) == 0, bench.Err);
        string[] plates = [.. Directory.GetFiles(bench.Folder.File("coupon"), "coupon*.3mf").Select(Path.GetFileName)!];
        Assert.All(["coupon-petg-black", "coupon-petg-white"],
            name => Assert.Contains(plates, plate => plate == name + ".3mf" || plate == name + "-1.3mf"));
        Assert.All(["coupon.txt", "answers.yaml"], name => Assert.True(File.Exists(bench.Folder.File($"coupon/{name}")), name));
        string sheet = Flat(File.ReadAllText(bench.Folder.File("coupon/coupon.txt")));
        Assert.Contains("calibrate answers.yaml", sheet, StringComparison.Ordinal);

        // The two for whoever is short of time go somewhere else, so that they do not replace the plate.
        Assert.True(bench.Run([.. commands[1], "-o", "short"]) == 0, bench.Err);

        // Asked one question after the other.
        bench.Typed = Typed(bench.Folder.File(commands[2][1]));
        Assert.True(bench.Run(commands[2]) == 0, bench.Err + bench.Out[^Math.Min(800, bench.Out.Length)..]);
        string told = Flat(bench.Out);
        Assert.All(Shown("    ", " -> "), line => Assert.Contains(line, told, StringComparison.Ordinal));

        Assert.True(bench.Run(commands[3]) == 0, bench.Err);
        Assert.True(File.Exists(bench.Folder.File("slice/fit-slice.txt")));

        Assert.True(bench.Run(commands[4]) is 0 or 1, bench.Err);
        using JsonDocument report = JsonDocument.Parse(File.ReadAllBytes(bench.Folder.File("housing/report.json")));
        JsonProperty[] measured =
        [
            .. report.RootElement.GetProperty("resolved").EnumerateObject()
                .Where(value => value.Name.StartsWith("print.measured.", StringComparison.Ordinal)),
        ];
        Assert.Contains(measured, value => value.Name == "print.measured.lip-fit");
        Assert.All(measured, value =>
            Assert.StartsWith("measured 2026-11-30", value.Value.GetProperty("why").GetString(), StringComparison.Ordinal));
    }

    [Fact]
    public void Answers_that_it_shows_as_refused_are_refused_in_these_words()
    {
        using var bench = new Bench();
        string[] told = [.. Shown("    answers.yaml:", "")];
        Assert.Equal(2, told.Length);

        bench.Folder.Write("answers.yaml", Answers(".25", ".2", ".4"));
        Assert.Equal(2, bench.Run("calibrate", "answers.yaml"));
        Assert.Contains(told[0], Flat(bench.Err), StringComparison.Ordinal);

        bench.Folder.Write("answers.yaml", Answers(".4", ".5", ".6") + "  - kind: size-bar\n    answers: {}\n");
        bench.Typed = Typed(bench.Folder.File("answers.yaml"));
        Assert.Equal(2, bench.Run("calibrate", "answers.yaml"));
        Assert.Contains(told[1], Flat(bench.Err), StringComparison.Ordinal);
        Assert.False(Directory.Exists(bench.Folder.File("config")));
    }

    [Fact]
    public void Every_coupon_has_its_picture_there_and_every_picture_is_of_something()
    {
        string[] shown = [.. Picture().Matches(Page).Select(match => match.Groups["file"].Value).Order(StringComparer.Ordinal)];
        string[] there =
        [
            .. Directory.GetFiles(Repository.At("src", "docs", "calibrating")).Select(path => "calibrating/" + Path.GetFileName(path))
                .Order(StringComparer.Ordinal),
        ];
        Assert.Equal(there, shown);
        Assert.All(Coupons.CouponKinds.All, kind => Assert.Contains($"calibrating/{kind.Name}.png", shown));
    }

    // Lines of output that the page shows.
    private static IEnumerable<string> Shown(string start, string holds) => Page.Split('\n')
        .Where(line => line.StartsWith(start, StringComparison.Ordinal) && line.Contains(holds, StringComparison.Ordinal))
        .Select(line => line.Trim());

    // As wide as the terminal is, whatever that is.
    private static string Flat(string text) => Regex.Replace(text, @"\s+", " ");

    private static string Answers(string tight, string fits, string loose) =>
        $"""
        format: shellforge-answers/1
        printer: fdm-0.4
        filament: petg-black
        coupons:
          - kind: lid-fit
            answers:
              tight: {tight}
              fits: {fits}
              loose: {loose}
              turns: none

        """;

    // What is typed at the questions of a file, in their order, by somebody whose printer closes holes by two tenths.
    private static string Typed(string answers)
    {
        AnswerFile file = AnswerFileReader.Read(answers, File.ReadAllText(answers), WrittenBoard.Shipped).File!;
        (ImmutableArray<OpenQuestion> open, _) = Calibration.Questions(file);
        return string.Concat(open.Select(each => Answer(each) + "\n"));
    }

    private static string Answer(OpenQuestion open) => open.Question switch
    {
        SizeQuestion { Key: "four-lines" } size => Said(size.Drawn),
        SizeQuestion size => Said((size.Drawn * (1 - 0.0045)) - (size.Key is "x" or "y" or "width-x" or "width-y" ? 0 : 0.2)),
        StepQuestion step => Chosen(open.Kind.Name, step),
        WeightQuestion { Key: "push-0.08" } => "2.9",
        WeightQuestion { Key: "push-0.15" } => "4.0",
        WeightQuestion => "5.1",
        ReadingQuestion { Key: "open" } => "1000",

        // A spool twice as dense as its profile says.
        ReadingQuestion => Said(1000 / (1 + (2 * double.Parse(open.Question.Key["window-".Length..], CultureInfo.InvariantCulture)
            / WrittenBoard.Shipped.Filaments.Find("petg-white")!.TransmissionLength))),
        _ => throw new InvalidOperationException(open.Question.Key),
    };

    private static string Chosen(string kind, StepQuestion step) => (kind, step.Key) switch
    {
        ("lid-fit", "tight") => ".25",
        ("lid-fit", "fits") => ".3",
        ("lid-fit", "loose") => ".4",
        ("lid-fit", "turns") => ".50",
        ("insert-holes", "tight") => "4.10",
        ("insert-holes", "fits") => "4.15",
        ("insert-holes", "loose") => "4.25",
        ("thin-walls" or "overhangs", "broken" or "clean") => Said(step.Steps[3]),
        ("thin-walls" or "overhangs", _) => Said(step.Steps[4]),
        ("bridges", _) => Said(step.Steps[5]),
        ("plug-openings", "tight") => Said(step.Steps[1]),
        ("plug-openings", "fits") => Said(step.Steps[2]),
        (_, "tight") => Said(step.Steps[step.Steps.Length > 4 ? 3 : 0]),
        (_, "fits") => Said(step.Steps[step.Steps.Length > 4 ? 5 : 1]),
        _ => Said(step.Steps[^1]),
    };

    private static string Said(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
