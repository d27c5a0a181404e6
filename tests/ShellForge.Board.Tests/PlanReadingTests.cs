using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Variation;
using ShellForge.Testing;

namespace ShellForge.Board.Tests;

public class PlanReadingTests
{
    private static readonly ProfileLibrary Profiles = WrittenBoard.Shipped;

    [Fact]
    public void Every_word_of_a_plan_is_read()
    {
        SweepPlan plan = SweepPlanReader.Read("plan.yaml", WrittenPlan.Whole, Profiles).Plan!;

        Assert.Equal(["a.yaml", "b.yaml"], plan.Boards.Select(b => b.Raw));
        Assert.Equal([["2", "4"], ["4", "4.25", "4.5", "4.75", "5"], ["20", "25", "30", "35", "40"],
            ["petg-black", "petg-white", "petg-natural", "petg-grey"]],
            plan.Axes.Take(4).Select(axis => axis.Steps.Select(step => step[0].Value.Text).ToArray()));
        Assert.Equal(["m2.5x4-od4.6 snap", "m3x4-od4.6 screws"],
            plan.Axes[4].Steps.Select(step => $"{step[0].Value.Text} {step[1].Value.Text}"));
        Assert.Equal("{part: J1}", plan.Cases.Single().Settings[1].Value.Text);
        Assert.Equal(["housing.label.text", "name"], plan.Derived.Select(d => d.Path));
        Assert.Equal((VariantMark.Names, 10.0, 22.5), (plan.Mark, plan.SparesPercent, plan.Prices.Single().PerKilogram));
    }

    [Theory]
    [InlineData("format: shellforge-plan/1\nboard: a.yaml\nvari: {}", "plan.yaml:3:1: the plan has no key 'vari'", "vary")]
    [InlineData("format: shellforge-plan/1\nvary: {housing.walls: [2]}", "plan.yaml:1:1: the plan lacks 'board'", "")]
    [InlineData("format: shellforge-plan/1\nboard: a.yaml\nvary:\n  housing.walls: {from: 2, to: 4}",
        "plan.yaml:4:18: a range lacks all of step, count", "")]
    [InlineData("format: shellforge-plan/1\nboard: a.yaml\nvary:\n  housing.walls: {from: 2, to: 4, step: -1}",
        "plan.yaml:4:3: 'housing.walls' has no values", "")]
    [InlineData("format: shellforge-plan/1\nboard: a.yaml\nvary:\n  print.shell: {profiles: filaments, like: \"petk-*\"}",
        "plan.yaml:4:3: 'print.shell' has no values", "")]
    [InlineData("format: shellforge-plan/1\nboard: a.yaml\nvary:\n  print..shell: [a]", "plan.yaml:4:3: 'print..shell' is no path", "")]
    [InlineData("format: shellforge-plan/1\nboard: a.yaml\nvary: {a: [1]}\ntogether: [{b: [1], a: [2]}]",
        "plan.yaml:4:21: 'a' is varied twice", "")]
    [InlineData("format: shellforge-plan/1\nboard: a.yaml\ntogether: [{b: [1], a: [2, 3]}]",
        "plan.yaml:3:21: 'a' has 2 values and 'b' has 1", "")]
    [InlineData("format: shellforge-plan/1\nboard: a.yaml\nvary: {walls: [1]}\nexcept: [{wall: 1}]",
        "plan.yaml:4:11: 'wall' is not varied here", "walls")]
    [InlineData("format: shellforge-plan/1\nboard: a.yaml\nvary: {shell: [petg-black]}\nexcept: [{shell: petg-blak}]",
        "plan.yaml:4:18: 'petg-blak' is no value of 'shell'", "petg-black")]
    [InlineData("format: shellforge-plan/1\nboard: a.yaml\nvary: {housing.walls: [1]}\nname: \"x {wals}\"",
        "plan.yaml:4:7: '{wals}' stands for nothing here", "")]
    [InlineData("format: shellforge-plan/1\nboard: a.yaml\nvary: {walls: [1]}\nbest: {wish: height, along: floor}",
        "plan.yaml:4:7: 'floor' is not varied by itself", "")]
    [InlineData("format: shellforge-plan/1\nboard: a.yaml\nbest: {wish: hight}", "plan.yaml:3:14: 'hight' does not fit here", "height")]
    [InlineData("format: shellforge-plan/1\nboard: a.yaml\nprices: {petg-blak: 3}", "plan.yaml:3:10: there is no filament 'petg-blak'",
        "petg-black")]
    public void A_mistake_is_told_at_its_place(string text, string told, string nearest)
    {
        SweepPlanResult read = SweepPlanReader.Read("plan.yaml", text, Profiles);

        Assert.Null(read.Plan);
        Assert.Contains(read.Diagnostics, d => d.ToString().StartsWith(told, StringComparison.Ordinal) && (d.Nearest ?? "") == nearest);
    }

    [Fact]
    public void All_mistakes_are_told_at_once()
    {
        SweepPlanResult read = SweepPlanReader.Read("plan.yaml", "format: shellforge-plan/2\nbord: a\nvary: {a..b: [1]}\nspares: -1",
            Profiles);

        Assert.Equal(["unknown-word", "unknown-key", "out-of-range"], read.Diagnostics.Where(d => d.IsError).Select(d => d.Code));
    }

    [Fact]
    public void The_schema_accepts_what_the_reader_accepts_and_refuses_faults_of_shape()
    {
        var judge = new SchemaJudge(SweepPlanReader.SchemaJson());

        Assert.True(SchemaJudge.IsSchema(SweepPlanReader.SchemaJson()));
        Assert.True(judge.Accepts(YamlAsJson.Of(WrittenPlan.Whole)));
        Assert.False(judge.Accepts(YamlAsJson.Of(WrittenPlan.Whole.Replace("vary:", "vari:", StringComparison.Ordinal))));
        Assert.False(judge.Accepts(YamlAsJson.Of(WrittenPlan.Whole.Replace("mark: names", "mark: paint", StringComparison.Ordinal))));
        Assert.False(judge.Accepts(YamlAsJson.Of(WrittenPlan.Whole.Replace("[2, 4]", "4", StringComparison.Ordinal))));
    }

    [Fact]
    public void A_value_of_the_plan_is_faulted_in_the_plan_and_shown_from_it()
    {
        string board = File.ReadAllText(BoardTexts.Folder("tests", "boards", "valid", "ring-92.yaml"));
        SweepPlan plan =
            SweepPlanReader.Read("plan.yaml", "format: shellforge-plan/1\nboard: a.yaml\nvary:\n  housing.walls: [4, 400]", Profiles).Plan!;

        var wrong = Yaml.BoardFileReader.Words("a.yaml", board, Profiles, [plan.Axes[0].Steps[1][0].Override]);
        var right = Yaml.BoardFileReader.Read("a.yaml", board, Profiles, [plan.Axes[0].Steps[0][0].Override]);

        Assert.Equal(("plan.yaml", 4, 22), wrong.Where(d => d.IsError).Select(d => (d.File, d.Line, d.Column)).Single());
        Assert.Equal("plan.yaml", right.File!.Places["housing.walls"].File);
    }
}
