using ShellForge.Checks.Findings;
using ShellForge.Checks.Fit;
using ShellForge.Checks.Gauges;
using ShellForge.Planning;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Checks.Tests.Fit;

public class HeadAgainstPartTests
{
    // An M2 head is 4 across, a washer 5. The hole lies as drawn, bodies lie on a lattice: the gap is half a millimetre less a hair or
    // more.
    [Theory]
    [InlineData(20.1, 2.5, false, false)]
    [InlineData(20.3, 2.5, false, false)]
    [InlineData(20.7, 2.5, false, false)]
    [InlineData(20.1, 2.49, false, true)]
    [InlineData(20.1, 3.0, true, false)]
    [InlineData(20.3, 3.0, true, false)]
    [InlineData(20.7, 3.0, true, false)]
    public void Half_a_millimetre_beside_a_head_is_enough_to_a_thousandth(double hole, double away, bool washers, bool told)
    {
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard
        {
            Holes = [FormattableString.Invariant($"{{at: [{hole}, 0], diameter: 2.2}}"), "{at: [-30, 0], diameter: 2.2}"],
            Pixels = "{package: \"2020\", circle: 20, count: 8, from: 90, direction: cw}",
            Parts = [FormattableString.Invariant($"{{ref: C1, size: [2, 2, 1], side: top, at: [{hole + away + 1}, 0]}}")],
            Insert = "m2x3-od3.6",
            Housing = washers ? ["washers: true"] : [],
        }.Read());
        ScrewJointPlan screw = plan.Screws[0];
        Assert.Equal(washers, screw.Washer);
        Assert.DoesNotContain(plan.Refusals, refusal => refusal.Rule == "washer-meets-part");
        Finding[] found = [.. new HeadAgainstPart().Check(new HousingUnderCheck { Board = plan.Source, Plan = plan, Parts = [] })];
        Assert.Equal(told, found.Any(finding => finding.Subject == screw.Name));
    }
}
