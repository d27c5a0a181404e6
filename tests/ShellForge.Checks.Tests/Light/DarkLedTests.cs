using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.Light;
using ShellForge.Testing;

namespace ShellForge.Checks.Tests.Light;

/// <summary>LEDs that the window does not show.</summary>
public class DarkLedTests
{
    [Fact]
    public void A_board_cut_off_straight_beside_its_LEDs_is_stopped_by_their_names()
    {
        HousingUnderCheck housing = BuiltHousings.Of(new WrittenBoard
        {
            Outline = Circle(45, -27, 207) + "\n  centre: [0, 0]",
            Holes = ["{at: [0, 20], diameter: 2.7}", "{at: [-25, 5], diameter: 2.7}", "{at: [25, 5], diameter: 2.7}"],
            Pixels = "{package: \"5050\", circle: 78, count: 16, from: 0, skip: [11, 12, 13, 14, 15]}",
            Light = "{window: ring}",
        }.Read());
        Finding[] found = [.. new LedInTheDark().Check(housing)];
        Finding bezel = Assert.Single(found, finding => finding.Message.Contains("bezel", StringComparison.Ordinal));
        Assert.Equal(Severity.Stop, bezel.Severity);
        Assert.StartsWith("D1", bezel.Subject, StringComparison.Ordinal);
        Assert.Contains("light.window", bezel.Remedy, StringComparison.Ordinal);
        Assert.True(bezel.Measured > 5);

        // What is not lit is not rated.
        Assert.Null(housing.Light!.MinimumOverMean);
        Assert.Empty(new DotsShow().Check(housing));
    }

    [Fact]
    public void Single_LEDs_on_a_half_disc_that_no_ring_takes_in_are_stopped()
    {
        HousingUnderCheck housing = BuiltHousings.Of(new WrittenBoard
        {
            Outline = Circle(30, 0, 180),
            Holes = ["{at: [-20, 5], diameter: 2.7}", "{at: [20, 5], diameter: 2.7}", "{at: [0, 24], diameter: 2.7}"],
            Pixels = "[{package: \"5050\", at: [-14, 14]}, {package: \"5050\", at: [-5, 18]}, {package: \"5050\", at: [5, 18]}, {package: "
                + "\"5050\", at: [14, 14]}]",
            Light = "{window: disc}",
        }.Read());
        Assert.Contains(new LedInTheDark().Check(housing), finding => finding is { Severity: Severity.Stop, Subject: "D1, D4" });
    }

    [Fact]
    public void LEDs_on_a_circle_with_room_are_not_told()
    {
        HousingUnderCheck housing = BuiltHousings.Of(new WrittenBoard().Read());
        Assert.Empty(new LedInTheDark().Check(housing));
        Assert.InRange(housing.Light!.MinimumOverMean!.Value, 0.5, 1);
    }

    [Theory]
    [InlineData("D1 to D3, D5", "D1", "D2", "D3", "D5")]
    [InlineData("D1, D2", "D1", "D2")]
    [InlineData("D9 to D11, LED1", "D9", "D10", "D11", "LED1")]
    [InlineData("left, right", "left", "right")]
    public void Designators_that_follow_each_other_are_told_in_short(string expected, params string[] names) =>
        Assert.Equal(expected, LedInTheDark.Names(names));

    // Part of a circle, closed by a straight side.
    internal static string Circle(double radius, double from, double to) =>
        "{polygon: [" + string.Join(", ", Enumerable.Range(0, 61).Select(i =>
    {
        double at = (from + ((to - from) * i / 60)) * Math.PI / 180;
        return string.Create(System.Globalization.CultureInfo.InvariantCulture,
            $"[{radius * Math.Cos(at):0.###}, {radius * Math.Sin(at):0.###}]");
    })) + "]}";
}
