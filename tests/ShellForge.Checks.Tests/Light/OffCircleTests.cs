using System.Globalization;
using ShellForge.Planning;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Checks.Tests.Light;

/// <summary>
/// Outlines that leave little or no room about the board's middle are planned, or refused with the reason; none ends in an exception.
/// </summary>
public class OffCircleTests
{
    [Fact]
    public void A_half_disc_whose_middle_lies_on_its_straight_edge_has_its_LEDs_behind_a_window()
    {
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard
        {
            Outline = DarkLedTests.Circle(30, 0, 180) + "\n  centre: [0, 0]",
            Holes = ["{at: [-20, 5], diameter: 2.7}", "{at: [20, 5], diameter: 2.7}", "{at: [0, 24], diameter: 2.7}"],
            Pixels = "{package: \"5050\", circle: 36, count: 12, from: 20, skip: [6, 7, 8, 9, 10, 11, 12]}",
        }.Read());
        Assert.DoesNotContain(plan.Refusals, refusal => refusal.Rule == "no-room-for-window");
        Assert.All(plan.Source.Board.PixelCircles.SelectMany(circle => circle.Pixels),
            led => Assert.True(plan.Cover.Window.Contains(led.At)));
    }

    [Theory]
    [InlineData("[[-40, -3], [40, -3], [40, 3], [-40, 3]]")]
    [InlineData("[[-40, -2], [40, -2], [0, 4]]")]
    [InlineData("[[0, 0], [60, 0], [60, 8], [8, 8], [8, 60], [0, 60]]")]
    public void Thin_and_bent_outlines_are_planned_or_refused(string polygon)
    {
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard { Outline = $"{{polygon: {polygon}}}", Holes = [], Pixels = "[]" }.Read());
        Assert.NotNull(plan);
    }

    [Theory]
    [InlineData(12, 30, 5)]
    [InlineData(24, 30, 3)]
    [InlineData(40, 30, 2)]
    [InlineData(60, 40, 6)]
    public void Gears_are_planned(int teeth, double radius, double deep)
    {
        string corners = string.Join(", ", Enumerable.Range(0, 4 * teeth).Select(i =>
        {
            double r = i % 4 < 2 ? radius : radius - deep;
            double at = 2 * Math.PI * i / (4 * teeth);
            return string.Create(CultureInfo.InvariantCulture, $"[{r * Math.Cos(at):0.####}, {r * Math.Sin(at):0.####}]");
        }));
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard
        {
            Outline = $"{{polygon: [{corners}]}}",
            Holes = ["{circle: 30, count: 3, from: 0, diameter: 2.7}"],
            Pixels = "{package: \"2020\", circle: 22, count: 12}",
        }.Read());
        Assert.False(plan.Cover.Window.IsEmpty);
    }
}
