using System.Collections.Concurrent;
using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Numerics;
using ShellForge.Housing.Tests.Tub;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Tests.CoverSide;

/// <summary>Flanks of bead and groove with a caliper on the written STL: what is built is what the force was computed with.</summary>
public class SnapGaugeTests
{
    private const double Within = 0.01;
    private const double WithinDegrees = 1;
    private static readonly ConcurrentDictionary<HousingPart, RayGauge> Written = new();

    public static TheoryData<string, double> Samples => new() { { "tide-lamp", 33 }, { "mooring-beacon", 57 } };

    [Theory]
    [MemberData(nameof(Samples))]
    public void The_written_bead_leads_in_and_holds_at_the_angles_that_the_plan_states(string name, double near)
    {
        BuiltHousing housing = BuiltHousing.Sample(name);
        var snap = Assert.IsType<SnapClosurePlan>(housing.Plan.Closure);
        double at = Flat(housing, near);

        // The cover lies on its face: heights count from the front.
        double Lip(double z) => Outermost(housing, PartNames.Cover, -at, housing.Plan.Stack.Front - z)[^1];
        double lip = Lip(housing.Plan.Cover.LipBottom + 0.1);
        double low = snap.BeadZ - (snap.Crest / 2);
        double high = snap.BeadZ + (snap.Crest / 2);
        Assert.Equal(snap.BeadHeight, Lip(snap.BeadZ) - lip, Within);
        Assert.Equal(30, Degrees(Lip(low - 0.2) - Lip(low - 0.8), 0.6), WithinDegrees);
        Assert.Equal(45, Degrees(Lip(high + 0.1) - Lip(high + 0.5), 0.4), WithinDegrees);
        Assert.Equal(snap.LeadIn.Degrees, Degrees(Lip(low - 0.2) - Lip(low - 0.8), 0.6), WithinDegrees);
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public void The_written_groove_follows_the_bead_and_leaves_the_wall_that_the_plan_states(string name, double near)
    {
        BuiltHousing housing = BuiltHousing.Sample(name);
        var snap = Assert.IsType<SnapClosurePlan>(housing.Plan.Closure);
        double at = Flat(housing, near);
        double[] Wall(double z) => [.. Outermost(housing, PartNames.Tub, at, z).TakeLast(2)];
        double low = snap.GrooveZ - (snap.Crest / 2);
        double high = snap.GrooveZ + (snap.Crest / 2);
        Assert.Equal(snap.LeadIn.Degrees, Degrees(Wall(low - 0.1)[0] - Wall(low - 0.5)[0], 0.4), WithinDegrees);
        Assert.Equal(snap.Hold.Degrees, Degrees(Wall(high + 0.1)[0] - Wall(high + 0.4)[0], 0.3), WithinDegrees);
        double[] across = Wall(snap.GrooveZ);
        string told = housing.Plan.Decisions.First(d => d.Path == "closure.groove.wall-left").Value;
        Assert.Equal(double.Parse(told, System.Globalization.CultureInfo.InvariantCulture), across[1] - across[0], 2 * Within);
        Assert.True(across[1] - across[0] >= 0.8, "the least wall that prints sound");
    }

    // Where a probe from the axis meets the written part, its shrinkage undone.
    private static double[] Outermost(BuiltHousing housing, string part, double degrees, double z)
    {
        HousingPart built = housing.Parts[part];
        RayGauge gauge =
            Written.GetOrAdd(built, _ => RayGauge.OnWritten(SolidEvaluator.Evaluate(built.InPrint).Require(), built.Plan.ShrinkScale));
        Point2 along = Point2.Polar(1, Angle.FromDegrees(degrees));

        // The gauge scales heights too, which print at their true size.
        return gauge.Hits(new Point3(0, 0, z / built.Plan.ShrinkScale), new Point3(along.X, along.Y, 0));
    }

    private static double Degrees(double rise, double way) => Math.Atan2(rise, way) * 180 / Math.PI;

    private static double Flat(BuiltHousing housing, double nearDegrees)
    {
        double side = 360.0 / housing.Plan.Shell.Round!.Count;
        return (Math.Floor(nearDegrees / side) + 0.5) * side;
    }
}
