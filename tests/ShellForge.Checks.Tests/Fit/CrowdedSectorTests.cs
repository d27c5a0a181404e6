using ShellForge.Checks.Findings;
using ShellForge.Checks.Fit;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Checks.Tests.Fit;

public sealed class CrowdedSectorTests
{
    // A rectangle, whose corners reach farther than its sides, with a boss beside the port.
    private static readonly WrittenBoard Beside = new()
    {
        Outline = "{polygon: [[-40, -30], [40, -30], [40, 30], [-40, 30]]}",
        Holes = ["{at: [34, 24], diameter: 2.7}", "{at: [-34, 24], diameter: 2.7}", "{at: [-34, -24], diameter: 2.7}",
            "{at: [10, -18], diameter: 2.7}"],
        Pixels = "{package: \"2020\", circle: 36, count: 12, from: 90, direction: cw}",
        Cable = "{part: J1}",
        Parts = ["{ref: J1, package: usb-c-receptacle, side: bottom, at: [21, -26.5], faces: 270, past-edge: 0}"],
    };

    [Fact]
    public void The_rule_tells_what_the_plan_resolves_and_in_its_words()
    {
        var housing = BuiltHousings.Of(Beside.Read());
        Finding finding = Assert.Single(new CrowdedSector().Check(housing));
        Decision decision = Assert.Single(housing.Plan.Decisions, each => each.Path == "ports.J1.sector");
        Assert.EndsWith(": " + decision.Value, finding.Message, StringComparison.Ordinal);
        Assert.Contains("boss", decision.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void A_cable_exit_beside_an_opening_is_told_and_one_across_from_it_is_not()
    {
        bool Told(int angle) => new CrowdedSector().Check(BuiltHousings.Of(new WrittenBoard
        {
            Cable = "{round: 4, angle: 270}",
            Housing = ["openings:", FormattableString.Invariant($"  - {{name: sensor, wall: {angle}, diameter: 2}}")],
        }.Read())).Any(finding => finding.Message.Contains("the cable exit", StringComparison.Ordinal));
        Assert.True(Told(279));
        Assert.False(Told(90));
    }

    [Fact]
    public void A_cable_exit_that_would_break_into_a_port_is_refused_by_its_name_and_one_across_from_it_is_not()
    {
        bool Told(int angle) => BuiltHousings.Of(new WrittenBoard
        {
            Cable = $"{{round: 4, angle: {angle}}}",
            Parts = ["{ref: J1, package: usb-c-receptacle, side: bottom, faces: 270, past-edge: 0, port: open}"],
        }.Read()).Plan.Refusals.Any(refusal => refusal.Rule == "cable-exit-without-place"
            && refusal.Message.Contains("J1", StringComparison.Ordinal));
        Assert.True(Told(278));
        Assert.False(Told(90));
    }
}
