using ShellForge.Checks.Gauges;
using ShellForge.Checks.Print;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Checks.Tests.Print;

/// <summary>Print rules on whole housings as they are built.</summary>
public class PrintedHousingTests
{
    [Theory]
    [InlineData(0.0)]
    [InlineData(-1.0)]
    public void The_roof_of_a_port_in_a_curved_wall_carries_itself(double pastEdge)
    {
        HousingUnderCheck housing = BuiltHousings.Of(new WrittenBoard
        {
            Outline = "{disc: 60}",
            Holes = ["{circle: 52, count: 4, from: 45, diameter: 2.2}"],
            Pixels = "{package: \"2020\", circle: 34, count: 12, from: 90, direction: cw}",
            Parts = [FormattableString.Invariant(
                $"{{ref: J1, package: usb-c-receptacle, side: bottom, faces: 270, past-edge: {pastEdge}}}")],
            Insert = "m2x3-od3.6",
            Cable = "{part: J1}",
        }.Read());
        Assert.NotEqual(PortKind.SlotWithTongue, Assert.Single(housing.Plan.Ports).Kind);
        Assert.DoesNotContain(new NothingBelow().Check(housing), finding => finding.Subject == "tub");
    }
}
