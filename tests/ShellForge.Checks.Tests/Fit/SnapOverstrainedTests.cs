using ShellForge.Checks.Findings;
using ShellForge.Checks.Fit;
using ShellForge.Checks.Gauges;
using ShellForge.Planning;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Checks.Tests.Fit;

public class SnapOverstrainedTests
{
    [Theory]
    [InlineData("{disc: 80}")]
    [InlineData("{polygon: [[-40, -40], [40, -40], [40, 40], [-40, 40]]}")]
    public void A_lost_catch_is_told_once_with_what_keeps_the_bead_from_catching(string outline)
    {
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard { Outline = outline, Walls = 2 }.Read());
        var housing = new HousingUnderCheck { Board = plan.Source, Plan = plan, Parts = [] };
        Finding found = Assert.Single(
            CheckRun.Run(housing, [new PlanRefused(), new SnapOverstrained()]), finding => finding.Severity == Severity.Stop);
        Assert.Equal("snap-overstrained", found.Rule);
        Assert.Contains("a wall of 0.86 has no room", found.Message, StringComparison.Ordinal);
        Assert.Contains("'walls: 4'", found.Remedy, StringComparison.Ordinal);
        Assert.InRange(found.At!.Value.X, 40, 42);
    }
}
