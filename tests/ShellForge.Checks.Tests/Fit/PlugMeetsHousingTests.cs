using ShellForge.Checks.Fit;
using ShellForge.Checks.Gauges;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Checks.Tests.Fit;

public class PlugMeetsHousingTests
{
    private const string Disc = "{disc: 60}";
    private const string Ring = "{ring: {outer: 92, bore: 46}}";

    [Theory]
    [InlineData(Disc, "micro-b-receptacle", "top", -0.5)]
    [InlineData(Disc, "usb-c-receptacle", "top", 0.0)]
    [InlineData(Ring, "usb-c-receptacle", "top", -1.0)]
    [InlineData(Ring, "micro-b-receptacle", "bottom", -0.5)]
    public void A_plug_passes_lip_and_bead_to_a_mouth_a_little_behind_the_edge(string outline, string package, string side, double pastEdge)
    {
        bool disc = outline == Disc;
        HousingUnderCheck housing = BuiltHousings.Of(new WrittenBoard
        {
            Outline = outline,
            Holes = [disc ? "{circle: 52, count: 4, from: 45, diameter: 2.2}" : "{circle: 84, count: 4, from: 45, diameter: 2.2}"],
            Pixels = $"{{package: \"2020\", circle: {(disc ? 34 : 68)}, count: 12, from: 90, direction: cw}}",
            Parts = [FormattableString.Invariant($"{{ref: J1, package: {package}, side: {side}, faces: 270, past-edge: {pastEdge}}}")],
            Insert = "m2x3-od3.6",
            Cable = "{part: J1}",
        }.Read());
        PortPlan port = Assert.Single(housing.Plan.Ports);
        Assert.True(port.OpeningTop > housing.Plan.Cover.LipBottom, "the lip hangs in the plug's way");
        Assert.Empty(new PlugMeetsHousing().Check(housing));
    }
}
