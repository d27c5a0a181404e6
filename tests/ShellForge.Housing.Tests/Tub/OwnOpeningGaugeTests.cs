using System.Globalization;
using ShellForge.Geometry.Auditing;
using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Booleans.Settling;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Housing.Tests.Tub;

/// <summary>
/// Openings of the maker's own, over their whole range, measured back from the written tub. Each case is a whole tub, so a failing one is
/// named by its line in the board file and not made simpler.
/// </summary>
public sealed class OwnOpeningGaugeTests
{
    private const double Within = 0.02;
    private const double Step = 0.05;
    private static readonly Point3 Up = new(0, 0, 1);
    private static readonly string[] Boards =
        ["{disc: 80}", "{ring: {outer: 96, bore: 50}}", "{polygon: [[-40, -36], [40, -36], [40, 36], [-40, 36]]}"];

    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 6)];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void One_in_the_wall_comes_out_as_planned_with_a_roof_that_prints(int seed)
    {
        Draws draws = Of(seed);
        string outline = draws.Pick(Boards);
        int[] angles = outline.Contains("polygon", StringComparison.Ordinal) ? [0, 90, 180, 270] : [0, 17, 90, 200, 341];
        string text = string.Create(CultureInfo.InvariantCulture,
            $"{{name: own, wall: {angles[draws.Next(angles.Length)]}, over-board: {draws.Next(-12, 12) / 2.0:0.0}, {Shape(draws)}}}");
        HousingPlan plan = HousingPlanner.Plan(Board(outline, text).Read());
        if (plan.Openings.IsEmpty)
        {
            Assert.Contains(plan.Refusals, refusal => refusal.Subject == "own");
            return;
        }

        WallOpeningPlan opening = Assert.IsType<WallOpeningPlan>(Assert.Single(plan.Openings));
        RayGauge gauge = Written(plan);
        Box2 box = opening.Outline.Bounds;
        Point2 along = Point2.Polar(1, opening.Faces);
        var left = new Point3(0 - along.Y, along.X, 0);
        Point3 At(double u, double z) => new(
            (u * along.X) + (box.Centre.X * left.X), (u * along.Y) + (box.Centre.X * left.Y), z);

        // Across its middle near the ends of the chord, and upright in the thickness of the wall.
        double u = opening.WallInner + (plan.Shell.Wall / 2);
        Point3 inFace = At(opening.WallFace - (plan.Shell.Wall / 2), opening.AxisZ);
        Region about = opening.Outline.Moved(new Point2(0 - box.Centre.X, 0 - opening.AxisZ));
        Near(about.FarthestAlong(Angle.FromDegrees(270)), gauge.First(inFace, -1 * Up), text);
        Near(about.FarthestAlong(Angle.FromDegrees(90)), gauge.First(inFace, Up), text);
        Near(about.FarthestAlong(Angle.Zero), gauge.First(At(u, opening.AxisZ), left), text);
        Near(about.FarthestAlong(Angle.FromDegrees(180)), gauge.First(At(u, opening.AxisZ), -1 * left), text);
        double before = double.NaN;
        double limit = Angle.FromDegrees(45).Sin / Angle.FromDegrees(45).Cos;
        for (double z = opening.AxisZ; z < box.Max.Y && opening.Outline.Contains(new Point2(box.Centre.X, z)); z += Step)
        {
            double half = gauge.First(At(u, z), left);
            Assert.False(before - half > (Step * limit) + 0.001, $"{text}: the roof hangs over at {z:0.00}");
            before = half;
        }

        if (!text.Contains("turn", StringComparison.Ordinal))
        {
            Near(box.Size.X, gauge.First(At(u, opening.AxisZ), left) + gauge.First(At(u, opening.AxisZ), -1 * left), text);
        }

        // Nothing stands in it from outside to where it has to be open.
        (Point3 outside, Point3 inside) = opening.SightThrough(box.Centre);
        Assert.DoesNotContain(gauge.Hits(outside - (outside - inside), outside - inside), hit => hit < (outside - inside).Length);
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void One_in_the_floor_comes_out_as_planned(int seed)
    {
        Draws draws = Of(seed);
        string outline = draws.Pick(Boards);
        int radius = draws.Next(26, 40);
        string text = string.Create(CultureInfo.InvariantCulture,
            $"{{name: own, floor: {{polar: [{radius}, {draws.Next(360)}]}}, {Shape(draws)}}}");
        HousingPlan plan = HousingPlanner.Plan(Board(outline, text).Read());
        if (plan.Openings.IsEmpty)
        {
            Assert.Contains(plan.Refusals, refusal => refusal.Subject == "own");
            return;
        }

        FloorOpeningPlan opening = Assert.IsType<FloorOpeningPlan>(Assert.Single(plan.Openings));
        RayGauge gauge = Written(plan);
        var middle = new Point3(opening.At.X, opening.At.Y, plan.Stack.FloorTop / 2);
        for (int degrees = 0; degrees < 360; degrees += 15)
        {
            var direction = Angle.FromDegrees(degrees + 0.3);
            Near(opening.Outline.Moved(-1 * opening.At).FarthestAlong(direction),
                gauge.First(middle, new Point3(direction.Cos, direction.Sin, 0)), text);
        }

        Assert.Empty(gauge.Hits(middle with { Z = -1 }, Up));
        double up = Math.Min(0.4, plan.Stack.FloorTop / 2);
        Assert.Equal(up, opening.Chamfer, 0.005);
        IsChamfered(opening.Outline.Moved(-1 * opening.At), up,
            (height, direction) => gauge.First(middle with { Z = height }, direction), text);
    }

    [Theory]
    [MemberData(nameof(FrontSeeds))]
    public void One_in_the_front_comes_out_as_planned_of_bezel_or_diffuser(int seed)
    {
        Draws draws = Of(seed);
        int radius = draws.Pick([0, 6, 13, 32, 33, 34]);
        bool dropIn = draws.Next(2) == 0;
        string text = string.Create(CultureInfo.InvariantCulture,
            $"{{name: own, front: {{polar: [{radius}, {draws.Next(360)}]}}, {Shape(draws)}}}");
        HousingPlan plan = HousingPlanner.Plan((Board("{disc: 96}", text) with
        {
            Holes = ["{circle: 90, count: 3, from: 50, diameter: 2.7}"],
            Light = "{through: front, look: blend, window: 14, evenness: dots}",
            Diffuser = dropIn ? "{fit: drop-in, thickness: 1.2}" : "{fit: printed-in, thickness: 1.2}",
        }).Read());
        if (plan.Openings.IsEmpty)
        {
            Assert.Contains(plan.Refusals, refusal => refusal.Subject == "own");
            return;
        }

        FrontOpeningPlan opening = Assert.IsType<FrontOpeningPlan>(Assert.Single(plan.Openings));
        (RayGauge gauge, Transform3 toPrint) = Printed(plan, opening.InWindow ? PartNames.Diffuser : PartNames.Cover);
        double inner = opening.InWindow ? plan.Stack.DiffuserInner : plan.Stack.Front - plan.Cover.BezelThickness;
        double thick = opening.Face - inner;
        double First(double z, Point3 direction)
        {
            Point3 from = toPrint.Apply(new Point3(opening.At.X, opening.At.Y, z));
            Point3 to = toPrint.Apply(new Point3(opening.At.X + direction.X, opening.At.Y + direction.Y, z));
            return gauge.First(from, to - from) / (to - from).Length;
        }

        double middle = inner + (thick / 4);
        Region about = opening.Outline.Moved(-1 * opening.At);
        for (int degrees = 0; degrees < 360; degrees += 15)
        {
            var direction = Angle.FromDegrees(degrees + 0.3);
            Near(about.FarthestAlong(direction), First(middle, new Point3(direction.Cos, direction.Sin, 0)), text);
        }

        Assert.Equal(Math.Min(0.4, thick / 2), opening.Chamfer, 0.011);
        IsChamfered(about, opening.Chamfer, (height, direction) => First(opening.Face - height, direction), text);
        Point3 through = toPrint.Apply(new Point3(opening.At.X, opening.At.Y, -50));
        Assert.Empty(gauge.Hits(through, toPrint.Apply(new Point3(opening.At.X, opening.At.Y, 0)) - through));
        Assert.Equal(opening.InWindow, radius > 30);
    }

    public static TheoryData<int> FrontSeeds => [.. Enumerable.Range(1, 8)];

    // At 45 degrees the opening is wider by as much as a height over the bed lacks to the chamfer's leg. Straight sides only: at corners of
    // the outline the way to the side is longer.
    private static void IsChamfered(Region about, double leg, Func<double, Point3, double> first, string what)
    {
        (Point2 a, Point2 b) = about.Loops[0].Zip(about.Loops[0].Skip(1)).MaxBy(pair => Point2.Distance(pair.First, pair.Second));
        Point2 normal = (1 / Point2.Distance(a, b)) * new Point2(b.Y - a.Y, a.X - b.X);
        double away = Point2.Dot(a, normal);
        foreach (double height in new[] { 0.01, leg / 2, leg - 0.01 })
        {
            Near(away + leg - height, first(height, new Point3(normal.X, normal.Y, 0)), $"{what} at {height:0.00} over the bed");
        }
    }

    private static Draws Of(int seed)
    {
        var dice = new Random(seed);
        return new Draws([.. Enumerable.Range(0, 20).Select(_ => dice.Next(1 << 16))]);
    }

    private static string Shape(Draws draws)
    {
        string Size(int from, int to) => (draws.Next(from, to) / 10.0).ToString("0.0", CultureInfo.InvariantCulture);
        return draws.Next(4) switch
        {
            0 => $"diameter: {Size(8, 100)}",
            1 => $"slot: [{Size(8, 160)}, {Size(8, 70)}]",
            2 => $"rectangle: [{Size(8, 160)}, {Size(8, 70)}]",
            _ => $"rectangle: [{Size(10, 80)}, {Size(10, 60)}], corner: 0.4, turn: {draws.Next(180)}",
        };
    }

    private static WrittenBoard Board(string outline, string opening) => new()
    {
        Outline = outline,
        Holes = outline.Contains("polygon", StringComparison.Ordinal)
            ? ["{at: [34, 30], diameter: 2.7}", "{at: [-34, -30], diameter: 2.7}"] : ["{circle: 70, count: 3, from: 50, diameter: 2.7}"],
        Pixels = "{package: \"2020\", circle: 64, count: 16, from: 90, direction: cw}",
        Housing = ["openings:", $"  - {opening}"],
    };

    private static (RayGauge Gauge, Transform3 ToPrint) Printed(HousingPlan plan, string name)
    {
        HousingPart part = HousingBuilder.Build(plan).First(each => each.Name == name);
        SolidOutcome outcome = SolidEvaluator.Evaluate(part.InPrint);
        Assert.Null(outcome.Defect);
        Assert.True(MeshAudit.Run(outcome.Require().Mesh).IsClean);
        return (RayGauge.OnWritten(outcome.Require(), 1), part.Plan.ToFile);
    }

    private static RayGauge Written(HousingPlan plan)
    {
        HousingPart tub = HousingBuilder.Build(plan).First(p => p.Name == PartNames.Tub);
        SolidOutcome outcome = SolidEvaluator.Evaluate(tub.InPrint);
        Assert.Null(outcome.Defect);
        Assert.True(MeshAudit.Run(outcome.Require().Mesh).IsClean);
        Assert.Equal(1, Measure.Shells(outcome.Require().Mesh));
        return RayGauge.OnWritten(outcome.Require(), tub.Plan.ShrinkScale);
    }

    private static void Near(double planned, double measured, string what) =>
        Assert.True(Math.Abs(planned - measured) <= Within, $"{what}: planned {planned:0.000}, measured {measured:0.000}");
}
