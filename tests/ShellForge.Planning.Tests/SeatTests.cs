using ShellForge.Geometry.Planar;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Planning.Tests;

public sealed class SeatTests
{
    [Fact]
    public void No_slit_that_is_welded_shut_is_left_between_the_seat_and_a_closure_screws_post()
    {
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard
        {
            Outline = "{disc: 58}",
            Holes = ["{circle: 48.4, count: 9, from: 45, diameter: 3.2}"],
            Pixels = "{package: \"5050\", circle: 26.1, count: 10, from: 90, direction: cw}",
            Insert = "m3x4-od4.2",
            Closure = "screws",
            Cable = "{round: 3.0, angle: 65.0, relief: tie}",
            Print = "{printer: fdm-0.4-fine, shell: petg-black, diffuser: petg-white}",
        }.Read());
        double diameter = Assert.IsType<ScrewClosurePlan>(plan.Closure).PostDiameter;
        Assert.False(plan.Cover.Seat.IsEmpty);
        Assert.All(plan.Screws.Where(screw => screw.Use == ScrewUse.Closure), screw =>
        {
            double gap = plan.Cover.Seat.Distance(Region.Disc(screw.At, Ring.Peg(diameter / 2)));
            Assert.True(gap < 0.01 || gap > 0.4, $"{gap}");
        });
    }
}
