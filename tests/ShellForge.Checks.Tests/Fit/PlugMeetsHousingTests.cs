using ShellForge.Checks.Findings;
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

    [Theory]
    [InlineData("usb-c-receptacle", 0.0, 0.0)]
    [InlineData("usb-c-receptacle", 1.0, 0.0)]
    [InlineData("usb-c-receptacle", 0.0, 3.2)]
    [InlineData("micro-b-receptacle", 0.0, 0.0)]
    [InlineData("barrel-jack-5.5x2.1", 0.0, 0.0)]
    public void A_plug_passes_with_the_corners_that_were_measured_on_it(string package, double pastEdge, double corner)
    {
        HousingUnderCheck housing = Recessed(package, pastEdge, corner);

        Assert.Equal(corner, Assert.Single(housing.Plan.Ports).Mouth.PlugCornerRadius.Value);
        Assert.Empty(new PlugMeetsHousing().Check(housing));
    }

    [Fact]
    public void Square_corners_meet_a_recess_that_was_rounded_for_round_ones()
    {
        HousingUnderCheck round = Recessed("usb-c-receptacle", 0, 3.2);
        PortPlan port = Assert.Single(round.Plan.Ports);
        HousingUnderCheck square = round with
        {
            Plan = round.Plan with { Openings = [port with { Mouth = port.Mouth with { PlugCornerRadius = default } }] },
        };

        Assert.Empty(new PlugMeetsHousing().Check(round));
        Finding found = Assert.Single(new PlugMeetsHousing().Check(square));
        Assert.Equal(Severity.Stop, found.Severity);
        Assert.InRange(found.Measured!.Value, -1, -0.2);
    }

    // The mouth lies behind the wall's face, so that the overmould has to enter it.
    private static HousingUnderCheck Recessed(string package, double pastEdge, double corner)
    {
        HousingUnderCheck housing = BuiltHousings.Of(new WrittenBoard
        {
            Outline = Disc,
            Holes = ["{circle: 52, count: 4, from: 45, diameter: 2.2}"],
            Pixels = "{package: \"2020\", circle: 34, count: 12, from: 90, direction: cw}",
            Parts = [FormattableString.Invariant($"{{ref: J1, package: {package}, side: bottom, faces: 270, past-edge: {pastEdge}}}")],
            Insert = "m2x3-od3.6",
            Cable = "{part: J1}",
        }.Read(FormattableString.Invariant($"housing.measured={{plug: {{corner-radius: {corner}}}}}")));
        PortPlan port = Assert.Single(housing.Plan.Ports);
        Assert.True(port.Recess is not null || port.OpeningWidth == port.Mouth.RecessWidth, $"{port.Kind}");
        return housing;
    }
}
