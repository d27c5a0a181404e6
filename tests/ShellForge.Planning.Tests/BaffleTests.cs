using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Planning.Tests;

public sealed class BaffleTests
{
    // Heads of M4 stand higher over the board than the front that 'auto' finds for 27 mm of LEDs.
    private static readonly WrittenBoard Low = new()
    {
        Outline = "{disc: 60}",
        Holes = ["{circle: 48.4, count: 8, from: 15, diameter: 4.2}"],
        Pixels = "{package: \"3535\", circle: 27, count: 10, from: 90, direction: cw}",
        Insert = "m4x6-od6.0",
        Closure = "twist",
        Light = "{through: front, look: pixels}",
        Diffuser = "{thickness: 0.6, distance: auto, fit: printed-in}",
    };

    [Fact]
    public void Pixels_that_get_no_cells_are_told()
    {
        HousingPlan plan = HousingPlanner.Plan(Low.Read());
        Assert.Null(plan.Baffle);
        PlanRefusal told = Assert.Single(plan.Refusals, refusal => refusal.Rule == "cells-without-room");
        Assert.True(told.IsReplaced);
        Assert.InRange(told.Measured, 0, told.Limit - 0.01);
    }

    [Theory]
    [InlineData("{through: front, look: blend}", "twist")]
    [InlineData("{through: front, look: pixels}", "snap")]
    public void Light_that_may_blend_and_pixels_that_get_cells_are_not(string light, string closure)
    {
        HousingPlan plan = HousingPlanner.Plan((Low with { Light = light, Closure = closure }).Read());
        Assert.DoesNotContain(plan.Refusals, refusal => refusal.Rule == "cells-without-room");
    }
}
