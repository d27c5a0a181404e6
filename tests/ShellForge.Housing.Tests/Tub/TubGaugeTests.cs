using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Booleans.Settling;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Housing.Tests.Tub;

/// <summary>What was planned, measured back from the written tub.</summary>
public sealed class TubGaugeTests
{
    private const double Within = 0.01;

    // The corners of a hole's polygon stand out of its circle, mm.
    private const double OutOfRound = 0.03;
    private static readonly Point3 Up = new(0, 0, 1);
    private static readonly Point3 Down = new(0, 0, -1);

    [Theory]
    [InlineData("tide-lamp")]
    [InlineData("mooring-beacon")]
    [InlineData("dome-dial")]
    public void A_samples_tub_measures_as_planned(string sample) => Measure(HousingPlanner.Plan(WrittenBoard.Sample(sample)));

    [Fact]
    public void A_polygon_boards_tub_measures_as_planned() => Measure(HousingPlanner.Plan(new WrittenBoard
    {
        Outline = "{polygon: [[-40, -30], [40, -30], [40, 30], [-40, 30]]}",
        Holes = ["{at: [34, 24], diameter: 2.7}", "{at: [-34, 24], diameter: 2.7}", "{at: [-34, -24], diameter: 2.7}",
            "{at: [34, -24], diameter: 2.7}"],
        Pixels = "{package: \"2020\", circle: 36, count: 12, from: 90, direction: cw}",
    }.Read()));

    [Fact]
    public void A_closed_opening_and_ears_measure_as_planned() => Measure(HousingPlanner.Plan(new WrittenBoard
    {
        Holes = ["{circle: 66, count: 4, from: 45, diameter: 2.7}"],
        Pixels = "{package: \"2020\", circle: 58, count: 16, from: 90, direction: cw}",
        Closure = "screws",
        Cable = "{part: J1}",
        Parts = ["{ref: J1, package: usb-c-receptacle, side: bottom, faces: 270, past-edge: -0.5}"],
    }.Read()));

    [Theory]
    [InlineData("{disc: 80}", 255, 300)]
    [InlineData("{ring: {outer: 96, bore: 46}}", 20, 170)]
    [InlineData("{polygon: [[-40, -36], [40, -36], [40, 36], [-40, 36]]}", 0, 180)]
    public void Two_notches_measure_as_planned_each_closed_by_its_tongue(string outline, int first, int second)
    {
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard
        {
            Outline = outline,
            Holes = [],
            Pixels = "{package: \"2020\", circle: 62, count: 16, from: 90, direction: cw}",
            Cable = $"[{{name: feed, round: 5, angle: {first}}}, {{name: next, round: 3.5, angle: {second}, relief: knot}}]",
        }.Read());
        Assert.Equal(2, plan.CableExits.Length);
        Measure(plan);
        var gauge = RayGauge.OnAssembled(plan, PartNames.Cover);
        foreach (NotchExitPlan exit in plan.CableExits.Cast<NotchExitPlan>())
        {
            Point2 inWall = Point2.Polar((exit.WallInner + exit.WallFace) / 2, exit.At);
            Near(exit.Roof.Bottom + 5, gauge.First(new Point3(inWall.X, inWall.Y, -5), Up), $"tongue of {exit.Name}");
        }
    }

    [Theory]
    [InlineData("")]
    [InlineData(", plug: [12, 5]")]
    [InlineData(", plug: [18, 9], relief: knot")]
    public void A_cables_hole_in_the_floor_and_its_plugs_window_measure_as_planned(string more)
    {
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard { Cable = $"{{round: 4, angle: 250, through: floor{more}}}" }.Read());
        FloorExitPlan exit = Assert.IsType<FloorExitPlan>(Assert.Single(plan.CableExits));
        RayGauge gauge = Written(plan);
        var left = new Point3(0 - exit.At.Sin, exit.At.Cos, 0);
        var outward = new Point3(exit.At.Cos, exit.At.Sin, 0);
        double middle = plan.Stack.FloorTop / 2;
        var hole = new Point3(exit.Place.X, exit.Place.Y, middle);
        Assert.InRange(gauge.First(hole, left) + gauge.First(hole, -1 * left), exit.HoleDiameter - Within, exit.HoleDiameter + OutOfRound);
        var above = new Point3(exit.Place.X, exit.Place.Y, exit.FloorTop - 0.01);
        Assert.InRange(gauge.First(above, outward) + 0.01 - exit.EdgeChamfer, (exit.HoleDiameter / 2) - Within,
            (exit.HoleDiameter / 2) + OutOfRound);
        if (exit.Window is { } window)
        {
            var inside = new Point3(window.Middle.X, window.Middle.Y, middle);
            Near(window.Across, gauge.First(inside, left) + gauge.First(inside, -1 * left), "window");
            Near(window.Along / 2, gauge.First(inside, -1 * outward), "window along");
            Assert.Empty(gauge.Hits(new Point3(window.Middle.X, window.Middle.Y, -1), Up));
        }
    }

    [Theory]
    [InlineData("")]
    [InlineData("{ref: C9, size: [5, 5, 14], side: bottom, at: [14, 2]}")]
    public void A_hole_for_a_pin_and_its_tube_measure_as_planned(string beside)
    {
        string[] parts = ["{ref: SW1, package: switch-6x6-5, side: bottom, at: [-14, 2], port: open}", beside];
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard { Parts = [.. parts.Where(part => part.Length > 0)] }.Read());
        PinHolePlan hole = Assert.IsType<PinHolePlan>(Assert.Single(plan.Openings));
        RayGauge gauge = Written(plan);
        foreach (double z in new[] { hole.FloorTop / 2, hole.LedTo - 0.1 })
        {
            var middle = new Point3(hole.At.X, hole.At.Y, z);
            Assert.InRange(gauge.First(middle, new Point3(1, 0, 0)) + gauge.First(middle, new Point3(-1, 0, 0)),
                hole.Diameter - Within, hole.Diameter + OutOfRound);
        }

        // Nothing over the hole, and the tube's end where it was planned.
        Assert.Empty(gauge.Hits(new Point3(hole.At.X, hole.At.Y, -1), Up));
        Assert.Equal(beside.Length > 0, hole.Tube is not null);
        if (hole.Tube is { } tube)
        {
            double[] wall = gauge.Hits(new Point3(hole.At.X + ((hole.Diameter + tube.Outer) / 4), hole.At.Y, -1), Up);
            Assert.Equal(2, wall.Length);
            Near(tube.Top, wall[1] - 1, "end of the tube");
        }
    }

    [Theory]
    [InlineData("{disc: 80}")]
    [InlineData("{polygon: [[-40, -36], [40, -36], [40, 36], [-40, 36]]}")]
    public void The_groove_for_the_glue_measures_as_planned(string outline)
    {
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard { Outline = outline, Closure = "glue" }.Read());
        GlueClosurePlan glue = Assert.IsType<GlueClosurePlan>(plan.Closure);
        RayGauge gauge = Written(plan);
        Angle direction = Angle.FromDegrees(183.3);
        var outward = new Point3(direction.Cos, direction.Sin, 0);
        double Inner(double z) => gauge.First(new Point3(20 * outward.X, 20 * outward.Y, z), outward);
        double below = Inner(plan.Stack.PartingLine - glue.Groove - 0.3);
        double square = outline.Contains("disc", StringComparison.Ordinal) ? 1 : 1 / -direction.Cos;
        Near(below + (square * (glue.Groove - 0.1)), Inner(plan.Stack.PartingLine - 0.1), "groove near the rim");
        Near(below + (square * (glue.Groove / 2)), Inner(plan.Stack.PartingLine - (glue.Groove / 2)), "groove in its middle");
    }

    private static void Measure(HousingPlan plan)
    {
        RayGauge gauge = Written(plan);
        FloorAndWalls(plan, gauge);
        Assert.All(plan.Bosses, boss => Boss(plan, boss, gauge));
        Assert.All(plan.Ports, port => Port(plan, port, gauge));
        Assert.All(plan.CableExits.OfType<NotchExitPlan>(), exit => Notch(exit, gauge));
    }

    private static RayGauge Written(HousingPlan plan)
    {
        HousingPart tub = HousingBuilder.Build(plan).First(p => p.Name == PartNames.Tub);
        SolidOutcome outcome = SolidEvaluator.Evaluate(tub.InPrint);
        Assert.Null(outcome.Defect);
        return RayGauge.OnWritten(outcome.Require(), tub.Plan.ShrinkScale);
    }

    private static void FloorAndWalls(HousingPlan plan, RayGauge gauge)
    {
        (Angle direction, Point2 free) = FreePlace(plan);
        double[] floor = gauge.Hits(new Point3(free.X, free.Y, -10), Up);
        Assert.Equal(2, floor.Length);
        Near(plan.Stack.FloorTop, floor[1] - floor[0], "floor");
        Near(0, floor[0] - 10, "underside");

        // Above the bed chamfer and below lip, groove and port: the wall alone.
        var level = new Point3(free.X, free.Y, plan.Stack.FloorTop + 0.7);
        double[] outward = gauge.Hits(level, new Point3(direction.Cos, direction.Sin, 0));
        Near(plan.Shell.Wall, (outward[1] - outward[0]) * WallSlope(plan, direction), "wall");
        if (plan.Shell.Round is { } round)
        {
            Near(round.Inner, free.Length + outward[0], "inner radius");
            Near(round.Outer, free.Length + outward[1], "outer radius");
            if (round.HasBore)
            {
                double[] inward = gauge.Hits(level, new Point3(0 - direction.Cos, 0 - direction.Sin, 0));
                Near(round.BoreOuter, free.Length - inward[0], "bore wall towards the board");
                Near(round.BoreInner, free.Length - inward[1], "bore");
            }
        }
    }

    // A probe along a ray crosses a polygon's side at a slant.
    private static double WallSlope(HousingPlan plan, Angle direction) => plan.Shell.Round is not null ? 1
        : Math.Max(Math.Abs(direction.Cos), Math.Abs(direction.Sin));

    private static void Boss(HousingPlan plan, BossPlan boss, RayGauge gauge)
    {
        // Between lead-in and webs, seen from the axis: the hole's side and then the boss's.
        double z = boss.Top - 0.7;
        double[][] round = [.. Enumerable.Range(0, 72).Select(i => Angle.FromDegrees((5 * i) + 0.5))
            .Select(a => gauge.Hits(new Point3(boss.At.X, boss.At.Y, z), new Point3(a.Cos, a.Sin, 0)))];
        if (boss.Hole is { } hole)
        {
            Near(hole.Diameter, 2 * round.Min(h => h[0]), $"hole of {boss.Name}");
            double[] outer = [.. round.Select(h => h[1])];
            Near(boss.Diameter, 2 * outer.Where(r => r < (boss.Diameter / 2) + 0.02).Max(), $"{boss.Name}");
            Near(hole.Depth, gauge.First(new Point3(boss.At.X, boss.At.Y, boss.Top + 5), Down) - 5, $"depth in {boss.Name}");
            double onRim = ((hole.MouthDiameter / 2) + hole.LeadIn + (boss.Diameter / 2)) / 2;
            Near(boss.Top, boss.Top + 5 - round.Select((_, i) => Angle.FromDegrees((5 * i) + 0.5)).Min(a =>
                gauge.First(new Point3(boss.At.X + (onRim * a.Cos), boss.At.Y + (onRim * a.Sin), boss.Top + 5), Down)),
                    $"top of {boss.Name}");
            return;
        }

        // A rest has no hole: its top is met just inside the board's rim.
        Point2 inside = ((boss.At.Length - (boss.Diameter / 2) + 0.4) / boss.At.Length) * boss.At;
        Near(boss.Top, boss.Top + 5 - gauge.First(new Point3(inside.X, inside.Y, boss.Top + 5), Down), boss.Name);
    }

    private static void Port(HousingPlan plan, PortPlan port, RayGauge gauge)
    {
        Point2 out2 = Point2.Polar(1, port.Faces);
        Point2 left2 = new(0 - out2.Y, out2.X);
        var left = new Point3(left2.X, left2.Y, 0);

        // In the thickness of the wall, or of what the recess leaves of it, in front of the mouth.
        double u =
            ((port.Recess?.FaceU ?? port.WallFace) + Math.Max(port.WallInner, (port.Recess?.FaceU ?? port.WallFace) - plan.Shell.Wall)) / 2;
        Point2 middle = port.Face + ((u - Point2.Dot(port.Face, out2)) * out2);
        var at = new Point3(middle.X, middle.Y, (port.OpeningBottom + port.OpeningTop) / 2);
        Near(port.OpeningWidth, gauge.First(at, left) + gauge.First(at, -1 * left), $"width of {port.Ref}");
        Near(at.Z - port.OpeningBottom, gauge.First(at, Down), $"sill of {port.Ref}");
        double[] above = gauge.Hits(at, Up);
        if (port.Tongue is null)
        {
            Near(port.OpeningTop - at.Z, above[0], $"roof of {port.Ref}");
        }
        else
        {
            Assert.Empty(above);
        }

        if (port.Recess is { } recess)
        {
            // Just before its floor: farther out, the round wall has ended beside it.
            double face = recess.FaceU + 0.1;
            Point2 before = port.Face + ((face - Point2.Dot(port.Face, out2)) * out2);
            double beside = gauge.First(new Point3(before.X, before.Y, at.Z), left);
            Near(recess.Width / 2, beside, $"recess of {port.Ref}");
        }
    }

    private static void Notch(NotchExitPlan exit, RayGauge gauge)
    {
        Point2 out2 = Point2.Polar(1, exit.At);
        double u = exit.WallFace - exit.EdgeChamfer - 0.2;
        var axis = new Point3(u * out2.X, u * out2.Y, exit.NotchBottom + (exit.NotchWidth / 2));
        var left = new Point3(0 - out2.Y, out2.X, 0);
        Near(exit.NotchWidth, gauge.First(axis, left) + gauge.First(axis, -1 * left), "notch");
        Near(exit.NotchWidth / 2, gauge.First(axis, Down), "foot of the notch");
        if (exit.TiePost is { } post)
        {
            var over = new Point3(post.At.X, post.At.Y, post.Top + 3);
            double[] hits = gauge.Hits(over, Down);
            Near(3, hits[0], "seat on the tie post");
            Near(post.SlotHeight, hits[2] - hits[1], "passage of the tie");
        }
    }

    // A direction, and a place on the floor in it, away from everything that stands there.
    private static (Angle Direction, Point2 Place) FreePlace(HousingPlan plan)
    {
        for (int i = 0; i < 360; i++)
        {
            Angle direction = Angle.FromDegrees(i + 0.25);
            double radius = plan.Shell.Round is { HasBore: true } ring ? (ring.Inner + ring.BoreOuter) / 2 : 10;
            Point2 place = Point2.Polar(radius, direction);
            bool away = plan.Bosses.All(b => Angle.Between(Angle.Of(b.At), direction).Degrees > 12)
                && plan.Ports.All(p => Angle.Between(Angle.Of(p.Face), direction).Degrees > 25)
                && plan.CableExits.All(exit => Angle.Between(exit.At, direction).Degrees > 40)
                && Angle.Between(plan.Key.At, direction).Degrees > 8
                && plan.Lettering.All(l => l.Strokes.Distance(place) > 3)
                && (plan.Mount is not KeyholeMountPlan keyholes
                    || keyholes.Keyholes.All(k => Angle.Between(Angle.Of(k.Entry), direction).Degrees > 15));
            if (away)
            {
                return (direction, place);
            }
        }

        throw new InvalidOperationException("no free direction");
    }

    private static void Near(double planned, double measured, string what) =>
        Assert.True(Math.Abs(planned - measured) <= Within, FormattableString.Invariant($"{what}: planned {planned}, measured {measured}"));
}
