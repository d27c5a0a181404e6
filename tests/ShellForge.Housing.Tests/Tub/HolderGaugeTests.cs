using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Housing.Tests.CoverSide;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Housing.Tests.Tub;

/// <summary>What holds the board's rim, measured back from the written parts.</summary>
public sealed class HolderGaugeTests
{
    private const double Within = 0.02;
    private static readonly Point3 Up = new(0, 0, 1);

    public static TheoryData<string> Outlines =>
        ["{disc: 80}", "{ring: {outer: 110, bore: 24}}", "{polygon: [[-40, -36], [40, -36], [40, 36], [-40, 36]]}"];

    [Theory]
    [MemberData(nameof(Outlines))]
    public void A_clamp_ring_comes_out_as_planned_and_its_ears_lie_in_their_pockets(string outline)
    {
        BuiltHousing built = Built(outline, "clamp");
        HousingPlan plan = built.Plan;
        ClampPlan clamp = Assert.IsType<ClampPlan>(plan.Hold.Holder);
        RayGauge ring = RayGauge.OnWritten(built.Solid(PartNames.Clamp), 1);
        RayGauge tub = RayGauge.OnWritten(built.Solid(PartNames.Tub), 1);
        double middle = (clamp.Bottom + clamp.Top) / 2;
        foreach (ScrewJointPlan screw in plan.Screws.Where(screw => screw.Use == ScrewUse.Clamp))
        {
            var axis = new Point3(screw.At.X, screw.At.Y, middle);
            Region rim = plan.Source.Board.Outline.Region.Filled();
            Point2 away = Enumerable.Range(0, 720).Select(i => Point2.Polar(1, Angle.FromDegrees(i / 2.0)))
                .MaxBy(way => rim.Distance(screw.At + way));
            var along = new Point3(away.X, away.Y, 0);
            var across = new Point3(0 - away.Y, away.X, 0);
            Near(screw.PassDiameter, ring.First(axis, across) + ring.First(axis, -1 * across));
            Near(screw.Boss.Top, clamp.Bottom + 5 - tub.First(
                new Point3(screw.At.X + (2.6 * across.X), screw.At.Y + (2.6 * across.Y), clamp.Bottom + 5), -1 * Up));

            // From the hole out through the ear: its end, then air, then the pocket's wall.
            double[] ear = ring.Hits(axis, along);
            double wall = tub.First(axis, along);
            Assert.InRange(wall - ear[^1], 0.3, 0.45);
            double[] aside = ring.Hits(axis, across);
            Assert.InRange(tub.First(axis, across) - aside[^1], 0.3, 0.45);
        }

        // Between the ears its section is the planned one, over the board by the planned overlap.
        Point2 free = Enumerable.Range(0, 72).Select(i => Point2.Polar(1, Angle.FromDegrees((5 * i) + 2.5)))
            .First(way => clamp.Screws.All(at => Angle.Between(Angle.Of(at), Angle.Of(way)).Degrees > 20)
                && Math.Abs(Math.Abs(way.X) - Math.Abs(way.Y)) > 0.5);
        Region board = plan.Source.Board.Outline.Region.Filled();
        double edge = board.FarthestAlong(Angle.Of(free));
        double[] through = ring.Hits(new Point3(0, 0, middle), new Point3(free.X, free.Y, 0));
        double slant = Slant(board, free);
        Near(clamp.Width, (through[^1] - through[^2]) * slant);
        Near(clamp.Overlap, (edge - through[^2]) * slant);
        double inRing = (through[^1] + through[^2]) / 2;
        double[] upright = ring.Hits(new Point3(inRing * free.X, inRing * free.Y, clamp.Bottom - 1), Up);
        Near(1, upright[0]);
        Near(1 + clamp.Top - clamp.Bottom, upright[1]);
        Assert.Equal(0, built.Shared(PartNames.Tub, PartNames.Clamp), 3);
        Assert.Equal(0, built.Shared(PartNames.Cover, PartNames.Clamp), 3);
        Assert.Equal(0, built.Shared(PartNames.Baffle, PartNames.Clamp), 3);
    }

    [Theory]
    [MemberData(nameof(Outlines))]
    public void Clips_come_out_as_planned_free_beside_and_behind(string outline)
    {
        BuiltHousing built = Built(outline, "clips");
        HousingPlan plan = built.Plan;
        ClipsPlan clips = Assert.IsType<ClipsPlan>(plan.Hold.Holder);
        RayGauge tub = RayGauge.OnWritten(built.Solid(PartNames.Tub), 1);
        foreach ((Point2 edge, Angle outward) in clips.Hooks)
        {
            Point2 way = Point2.Polar(1, outward);
            Point3 At(double off, double z) => new(edge.X + (off * way.X), edge.Y + (off * way.Y), z);
            var outwards = new Point3(way.X, way.Y, 0);
            var across = new Point3(0 - way.Y, way.X, 0);

            // Under the board: the post's face, its back, and the wall behind its slot.
            double[] post = tub.Hits(At(-1, plan.Stack.BoardBottom - 2), outwards);
            Near(1 + plan.Shell.BoardEdgeGap, post[0]);
            Near(clips.Thickness, post[1] - post[0]);
            Assert.True(post[2] - post[1] >= clips.Bend + 0.2, $"{post[2] - post[1]}");

            // Its foot stands on the floor, its slot ends there, its sides are free.
            double inPost = post[0] - 1 + (clips.Thickness / 2);
            Near(plan.Stack.BoardBottom - 2 - clips.Bottom, tub.First(At(post[1] - 1 + 0.5, plan.Stack.BoardBottom - 2), -1 * Up));
            double[] beside = tub.Hits(At(inPost, plan.Stack.BoardBottom - 2), across);
            Near(3, beside[0]);
            Near(0.8, beside[1] - beside[0]);

            // The tip of the hook, and its upper end.
            double tip = clips.HookSide.Where(point => point.X < 0).Min(point => point.Y);
            Near(5 - clips.Reach, tub.First(At(-5, tip + 0.2), outwards));
            Near(clips.Top, plan.Stack.Front + 5 - tub.First(At(inPost, plan.Stack.Front + 5), -1 * Up));
        }

        Assert.Equal(0, built.Shared(PartNames.Tub, PartNames.Cover), 3);
    }

    // How squarely a ray from the middle meets the edge.
    private static double Slant(Region board, Point2 way)
    {
        var step = Angle.FromDegrees(0.2);
        Point2 before = Point2.Polar(board.FarthestAlong(Angle.Of(way) - step), Angle.Of(way) - step);
        Point2 after = Point2.Polar(board.FarthestAlong(Angle.Of(way) + step), Angle.Of(way) + step);
        return Math.Abs(Point2.Cross(way, (1 / Point2.Distance(before, after)) * (after - before)));
    }

    private static BuiltHousing Built(string outline, string hold) => BuiltHousing.Of("holder", new WrittenBoard
    {
        Holes = [],
        Outline = outline,
        Closure = "glue",
        Housing = [$"hold: {hold}"],
    }.Text);

    private static void Near(double planned, double measured) => Assert.InRange(measured, planned - Within, planned + Within);
}
