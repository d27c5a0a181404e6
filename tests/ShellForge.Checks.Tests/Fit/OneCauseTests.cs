using ShellForge.Checks.Findings;
using ShellForge.Checks.Fit;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.Print;
using ShellForge.Testing;

namespace ShellForge.Checks.Tests.Fit;

/// <summary>One cause is one finding, at the thing that has to be changed.</summary>
public class OneCauseTests
{
    private static readonly WrittenBoard Small = new()
    {
        Outline = "{disc: 60}",
        Holes = ["{circle: 52, count: 4, from: 45, diameter: 2.2}"],
        Pixels = "{package: \"2020\", circle: 34, count: 12, from: 90, direction: cw}",
        Insert = "m2x3-od3.6",
    };

    [Theory]
    [InlineData("top")]
    [InlineData("bottom")]
    public void A_part_over_a_hole_is_told_as_that_and_not_as_all_that_it_meets_there(string side)
    {
        WrittenBoard board = Small with { Parts = [$"{{ref: C1, size: [4, 3, 2], side: {side}, polar: [26, 45]}}"] };
        HousingUnderCheck housing = BuiltHousings.Of(board.Read());

        Finding told = Assert.Single(new HeadAgainstPart().Check(housing));
        Assert.Equal("C1 lies over hole 1 itself: no screw goes through it", told.Message);
        Assert.Equal(Severity.Stop, told.Severity);
        Assert.DoesNotContain(new PartAgainstHousing().Check(housing), finding => finding.Subject == "C1");
        Assert.Empty(MessageStyle.Faults(told.Message, told.Remedy));
    }

    [Fact]
    public void What_a_part_over_a_hole_meets_is_told_where_the_hole_is_accepted()
    {
        WrittenBoard board = Small with { Parts = ["{ref: C1, size: [4, 3, 2], side: bottom, polar: [26, 45]}"] };
        HousingUnderCheck housing = BuiltHousings.Of(board.Read("accept=[{rule: head-against-part, why: \"no screw there\"}]"));

        Assert.Contains(new PartAgainstHousing().Check(housing), finding => finding.Subject == "C1");
    }

    [Fact]
    public void A_plug_that_is_stopped_far_from_its_mouth_is_one_finding()
    {
        WrittenBoard board = Small with
        {
            Parts = ["{ref: J1, package: usb-c-receptacle, side: bottom, faces: 270, past-edge: -4}"],
            Cable = "{part: J1}",
        };
        HousingUnderCheck housing = BuiltHousings.Of(board.Read());

        Assert.Equal(Severity.Stop, Assert.Single(new PlugDoesNotSeat().Check(housing)).Severity);
        Assert.Empty(new PlugMeetsHousing().Check(housing));
    }

    [Fact]
    public void A_round_board_too_large_for_the_bed_is_one_finding_that_speaks_of_no_turn()
    {
        HousingUnderCheck housing = BuiltHousings.Of(new WrittenBoard
        {
            Outline = "{disc: 210}",
            Holes = ["{circle: 200, count: 4, from: 45, diameter: 2.7}"],
            Pixels = "{package: \"5050\", circle: 160, count: 16, from: 90, direction: cw}",
        }.Read());

        Finding told = Assert.Single(new OffTheBed().Check(housing));
        Assert.StartsWith("tub", told.Subject, StringComparison.Ordinal);
        Assert.Contains(" and cover", told.Subject, StringComparison.Ordinal);
        Assert.DoesNotContain("turned", told.Message, StringComparison.Ordinal);
        Assert.Empty(MessageStyle.Faults(told.Message, told.Remedy));
    }
}
