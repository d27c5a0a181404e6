using ShellForge.Board.Description;
using ShellForge.Checks;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.Print;
using ShellForge.Geometry.Measuring;
using ShellForge.Output.Drawings;
using ShellForge.Pipeline;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.EndToEnd.Tests;

/// <summary>
/// A board for each form of closure, mount, opening and exit that the samples don't have: each is made, audited and checked, and its steps,
/// shopping list and drawings tell of the form.
/// </summary>
public class FormBoardsTests
{
    // What the plan, the list and the drawings must say, each in words that only this form brings.
    private static readonly Dictionary<string, Told> Expected = new()
    {
        ["stand-disc"] = new("snap", ["Put it on its stand"], [], [("stand.svg", "stand, as it lies on the bed")]),
        ["stand-ring"] = new("screws", ["Put it on its stand"], [], [("stand.svg", "stand, as it lies on the bed")]),
        ["stand-cable"] = new("snap", ["Put it on its stand"], ["cable tie"], [("stand.svg", "stand, as it lies on the bed")]),
        ["twist-tripod"] = new("twist", ["turn", "tripod", "Bring the cable through the floor"], ["1/4-20"],
            [("plan.svg", "cable hole"), ("plan.svg", "plug window")]),
        ["twist-magnets"] = new("twist", ["turn", "magnet"], ["magnet"], [("plan.svg", "magnet")]),
        ["twist-without-holes"] = new("twist", ["keeps it down by posts under the cover"], ["magnet"], [("plan.svg", "magnet")]),
        ["glue-keyhole"] = new("glue", ["glue", "Hang"], ["glue", "wall screw"],
            [("plan.svg", "2x keyhole"), ("plan.svg", "screws 63"), ("drill-template.svg", "wall screw")]),
        ["pin-feet"] = new("snap", ["Try SW1 from outside", "feet"], ["rubber foot"],
            [("plan.svg", "SW1: pin hole"), ("section.svg", "the pin hole of SW1")]),
        ["edge-round-disc"] = new("snap", [], [], [("tub.svg", "edge R1.8"), ("cover.svg", "edge R2")]),
        ["edge-soft-ring"] = new("snap", ["Hang"], ["wall screw"], [("tub.svg", "edge R"), ("cover.svg", "edge R")]),
        ["edge-round-ears"] = new("screws", [], [], [("tub.svg", "edge R2"), ("cover.svg", "edge R2")]),
        ["several-cables"] = new("snap",
            ["Lay the cable 'from-before'", "Lay the cable 'to-next'", "Bring the cable 'probe' through the floor"], ["cable tie"],
            [("plan.svg", "cable from-before \u00D84"), ("plan.svg", "cable to-next \u00D84"), ("plan.svg", "cable probe hole"),
                ("drill-template.svg", "cable")]),
        ["fitted-size"] = new("snap", ["feet"], ["rubber foot"], [("plan.svg", "\u00D896"), ("section.svg", "22")]),
        ["clamp-ring"] = new("snap", ["Screw the clamp ring on", "The clamp ring, which comes next"], ["screw M2.5 x 6"],
            [("clamp.svg", "clamp, as it lies on the bed"), ("plan.svg", "clamp ring 0.86 x 2, 0.71 over the board")]),
        ["clamp-one-hole"] = new("twist", ["Screw the clamp ring on", "Drive 1 screw M2.5 x 5"], ["screw M2.5 x 6"],
            [("clamp.svg", "clamp, as it lies on the bed"), ("section.svg", "a screw of the clamp ring")]),
        ["clips-letter-d"] = new("snap", ["have snapped over it", "To take the board out: Bend one clip"], [],
            [("plan.svg", "3x clip, 0.86 thick, 0.8 over the board"), ("section.svg", "section through clip 1")]),
        ["own-openings"] = new("snap", [], [],
            [("plan.svg", "lever: 9 x 2.5"), ("plan.svg", "trimmer: \u00D84 at x 12, y -6"),
                ("cover.svg", "sensor: \u00D84 at x 0, y 0"), ("section.svg", "section through the opening")]),
    };

    public static TheoryData<string> Boards => [.. Expected.Keys];

    [Fact]
    public void Every_board_of_a_form_is_asked_for() => Assert.Equal(
        Directory.GetFiles(Repository.At("tests", "boards", "forms"), "*.yaml").Select(path => Path.GetFileNameWithoutExtension(path))
            .Order(StringComparer.Ordinal), Expected.Keys.Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Boards))]
    public void A_board_of_a_form_is_made_without_a_word_about_the_housing_itself_and_tells_of_the_form(string name)
    {
        Told told = Expected[name];
        BoardFile board = WrittenBoard.At(Repository.At("tests", "boards", "forms", name + ".yaml"));
        HousingUnderCheck housing = HousingPipeline.Draw(board);
        Finding[] found = [.. CheckRun.Run(housing, RuleList.All)];
        Assert.All(housing.Parts, part =>
        {
            Assert.True(part.IsSound, $"{part.Name}: {part.InPrint.Defect}");
            Assert.Equal(1, Measure.Shells(part.PrintMesh.Mesh));
        });
        string said = string.Join('\n', found.Select(finding => finding.ToString()));
        Assert.True(found.All(finding => finding.Severity < Severity.Warn), said);
        Assert.DoesNotContain(found, finding => finding.Subject == PartNames.Stand || finding.Rule == "control-out-of-reach");
        Assert.Equal(told.Closure, board.Housing.Closure.ToString().ToLowerInvariant());
        Assert.Empty(housing.Plan.Refusals);

        string steps = string.Join('\n', housing.Plan.Steps.Select(step => $"{step.Title}: {step.Text}"));
        Assert.All(told.Steps, words => Assert.Contains(words, steps, StringComparison.OrdinalIgnoreCase));
        Assert.All(housing.Plan.Steps, step => Assert.False(step.Shown.IsEmpty && step.Things.IsEmpty));
        string shopping = string.Join('\n', housing.Plan.Shopping.Select(item => item.Item));
        Assert.All(told.Shopping, words => Assert.Contains(words, shopping, StringComparison.OrdinalIgnoreCase));
        Dictionary<string, string> drawings = HousingDrawings.Of(housing, [])
            .ToDictionary(drawing => drawing.Name, drawing => drawing.Svg);
        Assert.DoesNotContain("\u00D8", drawings.GetValueOrDefault("stand.svg", ""), StringComparison.Ordinal);
        Assert.All(told.Drawn, drawn => Assert.Contains(drawn.Words, drawings[drawn.File], StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(45, "none")]
    [InlineData(60, "none")]
    [InlineData(100, "{round: 5, angle: 270}")]
    [InlineData(130, "none")]
    [InlineData(160, "none")]
    public void A_stand_of_any_size_prints_without_a_word_about_itself(int diameter, string cable)
    {
        BoardFile board = new WrittenBoard
        {
            Outline = $"{{disc: {diameter}}}",
            Holes = [],
            Pixels = $"{{package: \"2020\", circle: {diameter / 2}, count: {diameter / 8}, from: 90, direction: cw}}",
            Cable = cable,
            Mount = "stand",
        }.Read();
        HousingUnderCheck housing = HousingPipeline.Draw(board);
        MadePart stand = Assert.IsType<MadePart>(housing.Part(PartNames.Stand));
        Finding[] found = [.. CheckRun.Run(housing with { Parts = [stand] },
            [new NothingBelow(), new FeatureVanishes(), new GapCloses(), new WallBetweenLines(), new SkinTooThin(), new PoorFooting()])];
        Assert.True(found.Length == 0, string.Join('\n', found.Select(finding => finding.ToString())));
    }

    private sealed record Told(string Closure, string[] Steps, string[] Shopping, (string File, string Words)[] Drawn);
}
