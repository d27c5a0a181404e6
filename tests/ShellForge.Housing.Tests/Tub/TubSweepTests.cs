using ShellForge.Geometry.Auditing;
using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Booleans.Settling;
using ShellForge.Geometry.Measuring;
using ShellForge.Planning;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Housing.Tests.Tub;

/// <summary>Tubs of many boards: never a defect, never an exception, one clean shell each.</summary>
public sealed class TubSweepTests
{
    [Theory]
    [InlineData(20, 0, 0, "m2x3-od3.0", "snap", "none")]
    [InlineData(20, 0, 2, "m2x3-od3.6", "screws", "{round: 2.0, angle: 270, relief: knot}")]
    [InlineData(37, 23, 3, "m2x4-od3.6", "twist", "none")]
    [InlineData(60, 0, 12, "m2.5x4-od4.6", "screws", "{round: 4.5, angle: 30, relief: tie}")]
    [InlineData(80, 0, 4, "m3x5.7-od4.6", "screws", "{part: J1}")]
    [InlineData(112, 88, 6, "m2.5x5.7-od4.6", "snap", "{part: J1}")]
    [InlineData(150, 60, 0, "m3x4-od4.6", "screws", "{round: 6.0, angle: 200, relief: tie}")]
    [InlineData(250, 0, 8, "m3x5.7-od4.6", "twist", "{part: J1}")]
    [InlineData(250, 200, 12, "m3x3-od4.2", "screws", "{round: 3.0, angle: 77, relief: knot}")]
    public void A_tub_is_one_clean_shell(double outer, double bore, int holes, string insert, string closure, string cable)
    {
        double middle = (outer + bore) / 2;
        double thread = WrittenBoard.Shipped.Screws.All.First(s => s.Thread == WrittenBoard.Shipped.Inserts.Find(insert)!.Thread)
            .ThreadDiameter;
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard
        {
            Outline = bore > 0 ? FormattableString.Invariant($"{{ring: {{outer: {outer}, bore: {bore}}}}}")
                : FormattableString.Invariant($"{{disc: {outer}}}"),
            Holes = holes == 0 ? []
                : [FormattableString.Invariant(
                    $"{{circle: {outer - (2 * thread) - 3}, count: {holes}, from: 17, diameter: {thread + 0.2}}}")],
            Pixels = FormattableString.Invariant(
                $"{{package: \"2020\", circle: {(bore > 0 ? middle : outer * 0.5)}, count: 7, from: 90, direction: cw}}"),
            Parts = cable == "{part: J1}" ? ["{ref: J1, package: usb-c-receptacle, side: bottom, faces: 270, past-edge: 1.0}"] : [],
            Insert = insert,
            Closure = closure,
            Cable = cable,
        }.Read());
        HousingPart tub = HousingBuilder.Build(plan).First(p => p.Name == PartNames.Tub);
        SolidOutcome outcome = SolidEvaluator.Evaluate(tub.InPrint);
        Assert.Null(outcome.Defect);
        Assert.True(MeshAudit.Run(outcome.Require().Mesh).IsClean);
        Assert.Equal(1, Measure.Shells(outcome.Require().Mesh));
        Assert.Empty(outcome.Openings);
        Assert.True(Measure.Volume(outcome.Require().Mesh) > plan.Shell.Footprint.Area * plan.Stack.FloorTop * 0.8);
    }
}
