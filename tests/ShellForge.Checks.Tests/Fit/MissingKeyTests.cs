using ShellForge.Checks.Findings;
using ShellForge.Checks.Fit;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Housing;
using ShellForge.Planning;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Checks.Tests.Fit;

public class MissingKeyTests
{
    private static readonly HousingPlan Twisted = HousingPlanner.Plan(new WrittenBoard { Closure = "twist" }.Read());

    [Fact]
    public void Lugs_of_which_one_stands_out_of_the_spacing_go_in_one_way_only() => Assert.Empty(StopsOf(Twisted));

    [Fact]
    public void Lugs_in_even_spacing_go_in_turned_by_a_share_of_the_turn()
    {
        var twist = Assert.IsType<TwistClosurePlan>(Twisted.Closure);
        int count = twist.Lugs.Length;
        HousingPlan even = Twisted with
        {
            Closure = twist with
            {
                Lugs =
                [.. Enumerable.Range(0, count).Select(i => twist.Lugs[0] + Angle.FromDegrees(i * 360.0 / count))]
            },
        };

        Finding stop = Assert.Single(StopsOf(even));
        Assert.Equal(360.0 / count, stop.Measured!.Value, 6);
    }

    [Fact]
    public void A_snapped_cover_has_its_rib() =>
        Assert.Empty(StopsOf(HousingPlanner.Plan(new WrittenBoard().Read())));

    private static Finding[] StopsOf(HousingPlan plan)
    {
        var housing = new HousingUnderCheck
        {
            Board = plan.Source,
            Plan = plan,
            Parts = [.. PartMaker.Make(plan).Where(part => part.Name is PartNames.Tub or PartNames.Cover)],
        };
        return [.. new MissingKey().Check(housing).Where(finding => finding.Severity == Severity.Stop)];
    }
}
