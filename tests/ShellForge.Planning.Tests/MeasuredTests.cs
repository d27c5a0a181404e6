using ShellForge.Board.Description;
using ShellForge.Board.Diagnostics;
using ShellForge.Board.Yaml;
using ShellForge.Board.Yaml.Overriding;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Planning.Tests;

/// <summary>Sizes that differ between sellers, measured on the batch at hand.</summary>
public class MeasuredTests
{
    private const string Usb = "{ref: J1, package: usb-c-receptacle, side: bottom, faces: 270, past-edge: 1.0}";

    private static readonly WrittenBoard Base = new() { Parts = [Usb], Cable = "{part: J1}" };

    private static BoardReadResult Read(WrittenBoard board, params string[] set) => BoardFileReader.Read(
        "board.yaml", board.Text, WrittenBoard.Shipped, [.. set.Select(SetOverride.Parse)]);

    private static HousingPlan Plan(WrittenBoard board, params string[] set) => HousingPlanner.Plan(Read(board, set).File!);

    [Fact]
    public void A_measured_insert_moves_hole_boss_and_depth_and_says_so()
    {
        HousingPlan nominal = Plan(Base);
        HousingPlan plan = Plan(Base, "housing.measured={insert: {outer: 4.3, length: 4.4}, date: 2026-11-29, batch: K7}");

        Assert.All(nominal.Bosses.Zip(plan.Bosses), pair =>
        {
            Assert.Equal(pair.First.Hole!.Diameter - 0.3, pair.Second.Hole!.Diameter, 6);
            Assert.True(pair.Second.Hole.Depth > pair.First.Hole.Depth);
        });
        Decision told = plan.Decisions.Single(decision => decision.Path == "housing.measured.insert.outer");
        Assert.Equal("4.3", told.Value);
        Assert.Contains("measured 2026-11-29, batch K7; nominal 4.6", told.Why, StringComparison.Ordinal);
        Assert.DoesNotContain(nominal.Decisions, decision => decision.Path.Contains("measured", StringComparison.Ordinal));
    }

    [Fact]
    public void A_measured_plug_moves_its_recess_and_keeps_its_room()
    {
        BoardPart nominal = Read(Base).File!.Board.Parts.Single(part => part.Ref == "J1");
        BoardPart part = Read(Base, "housing.measured={plug: {width: 11, height: 6}}").File!.Board.Parts.Single(each => each.Ref == "J1");

        Assert.Equal((11, 6), (part.Mouth!.Profile.PlugWidth.Value, part.Mouth.Profile.PlugHeight.Value));
        Assert.Equal(nominal.Mouth!.Profile.RecessWidth - nominal.Mouth.Profile.PlugWidth,
            part.Mouth.Profile.RecessWidth - part.Mouth.Profile.PlugWidth, 6);
    }

    [Fact]
    public void Measured_magnets_get_their_own_pockets()
    {
        var board = new WrittenBoard { Mount = "magnets", Outline = "{disc: 100}" };
        var nominal = Assert.IsType<MagnetMountPlan>(Plan(board).Mount);
        var mount = Assert.IsType<MagnetMountPlan>(Plan(board, "housing.measured={magnet: {diameter: 8.2, height: 3.4}}").Mount);

        Assert.Equal(nominal.PocketDiameter + 0.2, mount.PocketDiameter, 6);
        Assert.True(mount.Rim > nominal.Rim);
    }

    [Fact]
    public void A_measured_board_is_told_with_its_nominal_size()
    {
        HousingPlan plan = Plan(Base, "board.measured={outer: 79.6, thickness: 1.52, date: 2026-11-29}");

        Assert.Equal(
            ["the board's outer diameter, measured 2026-11-29; nominal 80", "the board's thickness, measured 2026-11-29; nominal 1.6"],
            plan.Decisions.Where(decision => decision.Path.StartsWith("board.measured.", StringComparison.Ordinal))
                .Select(decision => decision.Why));
        Assert.Equal(1.52, plan.Source.Board.Thickness);
    }

    [Theory]
    [InlineData("housing.measured={magnet: {diameter: 8.2}}", "measured-without-magnets")]
    [InlineData("housing.measured={insert: {outer: 6}}", "measured-far-off")]
    [InlineData("housing.measured={plug: {width: 40}}", "measured-far-off")]
    [InlineData("housing.measured={plug: {height: 6, corner-radius: 3.1}}", "measured-far-off")]
    [InlineData("housing.measured={insert: {outer: 4.4}, date: 2026-13-01}", "not-a-date")]
    [InlineData("board.measured={tab-stub: 0.4}", "measured-without-tabs")]
    public void What_contradicts_the_file_or_is_absurd_is_told_with_its_place(string set, string code)
    {
        Diagnostic told = Assert.Single(Read(Base, set).Diagnostics, diagnostic => diagnostic.Code == code);

        Assert.True(told.Line >= 0 && told.Message.Length > 10);
    }

    [Fact]
    public void A_plug_without_a_connector_is_told() =>
        Assert.Contains(Read(new WrittenBoard(), "housing.measured={plug: {width: 11}}").Diagnostics,
            diagnostic => diagnostic.Code == "measured-without-plug");

    [Fact]
    public void Where_things_lie_on_the_board_is_told_so_that_a_later_report_can_name_what_moved()
    {
        HousingPlan plan = Plan(Base);
        HousingPlan moved = Plan(Base, "board.parts[J1].past-edge=1.5");

        Assert.Equal(["board.J1"], plan.Decisions.Where(decision => decision.Path.StartsWith("board.", StringComparison.Ordinal))
            .Where(decision => moved.Decisions.Single(other => other.Path == decision.Path).Value != decision.Value)
            .Select(decision => decision.Path));
    }
}
