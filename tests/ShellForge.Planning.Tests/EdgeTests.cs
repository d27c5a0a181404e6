using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Planning.Tests;

/// <summary>Rounded outer edges as they are decided.</summary>
public sealed class EdgeTests
{
    private static readonly WrittenBoard Lamp = new() { Walls = 4, Floor = 2.4 };

    private static HousingPlan Planned(WrittenBoard board, string edge, params string[] more) =>
        HousingPlanner.Plan(board.Read([$"housing.edge={edge}", .. more]));

    private static Decision Said(HousingPlan plan, string path) => Assert.Single(plan.Decisions, each => each.Path == path);

    public static TheoryData<double, double> Sections
    {
        get
        {
            var data = new TheoryData<double, double>();
            foreach (double radius in new[] { 0.8, 1, 2, 3.3, 6, 20 })
            {
                foreach (double overhang in new[] { 20.0, 30, 45, 60, 85 })
                {
                    data.Add(radius, overhang);
                }
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Sections))]
    public void No_facet_leans_farther_than_the_printer_manages_and_every_corner_lies_on_the_arc(double radius, double overhang)
    {
        var edge = EdgePlan.Of(radius, overhang);
        Assert.Equal(0, edge.Points[0].Height);
        Assert.Equal(0, edge.Points[^1].Inset, 9);
        Assert.Equal(radius, edge.Points[^1].Height, 9);
        for (int i = 1; i < edge.Points.Length; i++)
        {
            EdgePoint below = edge.Points[i - 1];
            EdgePoint above = edge.Points[i];
            double lean = Angle.Of(new Point2(above.Height - below.Height, below.Inset - above.Inset)).Degrees;
            Assert.InRange(lean, 0, overhang - 2.9);
            Assert.Equal(radius, Point2.Distance(new Point2(above.Inset, above.Height), new Point2(radius, radius)), 6);

            // Half way along a facet of the arc the true one is nearer than the chord error.
            Point2 half = new((above.Inset + below.Inset) / 2, (above.Height + below.Height) / 2);
            double off = radius - Point2.Distance(half, new Point2(radius, radius));
            Assert.True(i == 1 || off is >= 0 and <= Tolerances.ChordError + 1e-9, $"{off}");
            Assert.InRange(half.X - edge.InsetAt(half.Y), -1e-9, 2 * Tolerances.ChordError / Angle.FromDegrees(lean).Cos);
        }
    }

    [Theory]
    [MemberData(nameof(Sections))]
    public void What_covers_a_hollow_is_the_nearest_point_of_bed_edge_and_wall(double radius, double overhang)
    {
        var edge = EdgePlan.Of(radius, overhang);
        foreach ((double inset, double height) in new[] { (0.4, 0.3), (1.0, 2.4), (2.6, 1.2), (0.9, 8), (5.0, 0.5) })
        {
            // Walked along in small steps: bed, corners of the section, wall.
            double nearest = double.PositiveInfinity;
            void Walk(Point2 from, Point2 to)
            {
                for (int i = 0; i <= 4000; i++)
                {
                    nearest = Math.Min(nearest, Point2.Distance(new Point2(inset, height), from + (i / 4000.0 * (to - from))));
                }
            }

            Walk(new Point2(40, 0), new Point2(edge.Inset, 0));
            for (int i = 1; i < edge.Points.Length; i++)
            {
                Walk(new Point2(edge.Points[i - 1].Inset, edge.Points[i - 1].Height),
                    new Point2(edge.Points[i].Inset, edge.Points[i].Height));
            }

            Walk(new Point2(0, radius), new Point2(0, radius + 40));
            double covers = edge.Covers(inset, height);
            if (inset < edge.InsetAt(height))
            {
                Assert.True(covers < 0);
            }
            else
            {
                Assert.Equal(nearest, covers, 1.5e-2);
            }
        }
    }

    [Fact]
    public void Without_a_wish_edges_keep_the_chamfer_and_nothing_is_told()
    {
        HousingPlan plan = HousingPlanner.Plan(Lamp.Read());
        Assert.Null(plan.Shell.FloorEdge);
        Assert.Null(plan.Cover.FrontEdge);
        Assert.DoesNotContain(plan.Decisions, each => each.Path.StartsWith("edge", StringComparison.Ordinal));
        Assert.Equal(plan.Decisions.Select(each => each.Value), Planned(Lamp, "chamfer").Decisions.Select(each => each.Value));
    }

    [Fact]
    public void Soft_is_rounder_than_round_and_a_radius_is_taken_as_it_is()
    {
        HousingPlan round = Planned(Lamp, "round");
        HousingPlan soft = Planned(Lamp, "soft");
        HousingPlan asked = Planned(Lamp, "1.5 mm");
        Assert.True(round.Shell.FloorEdge!.Radius < soft.Shell.FloorEdge!.Radius);
        Assert.True(round.Cover.FrontEdge!.Radius < soft.Cover.FrontEdge!.Radius);
        Assert.Equal(1.5, asked.Shell.FloorEdge!.Radius);
        Assert.Equal(1.5, asked.Cover.FrontEdge!.Radius);
        Assert.All(new[] { round, soft, asked }, plan => Assert.Empty(plan.Refusals));
        Assert.Contains("as large as", Said(soft, "edge.floor").Why, StringComparison.Ordinal);
        Assert.Equal("1.5", Said(asked, "edge.front").Value);
    }

    [Fact]
    public void A_radius_that_is_too_large_is_cut_and_told_with_what_is_in_its_way()
    {
        HousingPlan plan = Planned(Lamp, "12 mm");
        PlanRefusal[] cut = [.. plan.Refusals.Where(each => each.Rule == "edge-cut")];
        Assert.Equal(2, cut.Length);
        Assert.All(cut, each =>
        {
            Assert.True(each.IsReplaced);
            Assert.Equal(12, each.Limit);
            Assert.Empty(MessageStyle.Faults(each.Message, each.Remedy));
        });
        Assert.Contains(cut, each =>
            each.Measured == plan.Shell.FloorEdge!.Radius && each.Message.Contains("wall and floor", StringComparison.Ordinal));
        Assert.Contains(cut, each => each.Measured == plan.Cover.FrontEdge!.Radius);

        // What it advises is taken without a word.
        double smaller = Math.Min(plan.Shell.FloorEdge!.Radius, plan.Cover.FrontEdge!.Radius);
        Assert.DoesNotContain(Planned(Lamp, FormattableString.Invariant($"{smaller}")).Refusals, each => each.Rule == "edge-cut");
    }

    [Fact]
    public void One_that_stays_chamfered_beside_rounded_ones_is_told_once_as_a_note()
    {
        // A slot in the wall right over a thin floor.
        WrittenBoard thin = Lamp with { Floor = 0.6, Housing = ["openings:", "  - {name: air, wall: 20, height: 1.2, slot: [6, 1]}"] };
        HousingPlan plan = Planned(thin, "round");
        Assert.Null(plan.Shell.FloorEdge);
        Assert.NotNull(plan.Cover.FrontEdge);
        PlanRefusal told = Assert.Single(plan.Refusals);
        Assert.Equal("edge-without-room", told.Rule);
        Assert.True(told.IsNoted);
        Assert.Contains("edge of the floor keeps its chamfer, the others are rounded: the opening 'air'", told.Message, StringComparison.Ordinal);
        Assert.Empty(MessageStyle.Faults(told.Message, told.Remedy));
    }

    [Theory]
    [InlineData("housing.walls=6", "housing.floor=5")]
    public void Thicker_walls_and_floors_bear_rounder_edges(params string[] thicker) =>
        Assert.True(Planned(Lamp, "8 mm", thicker).Shell.FloorEdge!.Radius > Planned(Lamp, "8 mm").Shell.FloorEdge!.Radius);

    [Fact]
    public void Two_lines_of_plastic_stay_everywhere_beside_the_room()
    {
        foreach (int walls in new[] { 2, 3, 4, 6, 9 })
        {
            foreach (double floor in new[] { 0.8, 1.2, 2, 3, 6 })
            {
                HousingPlan plan = Planned(Lamp with { Walls = walls, Floor = floor }, "soft");
                double kept = Math.Min(0.85, Math.Min(plan.Shell.Wall, plan.Stack.FloorTop)) - 1e-3;
                Assert.True(plan.Shell.FloorEdge is not { } edge || edge.Covers(plan.Shell.Wall, plan.Stack.FloorTop) >= kept,
                    $"{walls} lines, floor {floor}");
            }
        }
    }

    [Theory]
    [InlineData("feet", "housing.mount=feet")]
    [InlineData("keyhole", "housing.mount=keyhole")]
    [InlineData("magnets", "housing.mount=magnets")]
    [InlineData("tripod", "housing.mount=tripod")]
    [InlineData("label", "housing.label={text: \"EDGE\"}")]
    [InlineData("vents", "housing.vents=floor")]
    public void What_lies_in_the_floor_keeps_level_floor_beside_it(string what, string set)
    {
        HousingPlan plan = Planned(Lamp, "soft", set);
        Assert.NotNull(plan.Shell.FloorEdge);
        Geometry.Planar.Region level = plan.Shell.Footprint.Offset(0 - plan.Shell.FloorEdge.Inset);
        Geometry.Planar.Region taken = Geometry.Planar.Region.Union(
            [plan.Mount?.OnOuterFloor ?? Geometry.Planar.Region.Empty, .. plan.Vents.Select(vent => vent.Outline),
                .. plan.Lettering.Where(line => !line.Raised && line.Part == PartNames.Tub).Select(line => line.Strokes)]);
        Assert.False(taken.IsEmpty, what);
        Assert.True(level.Contains(taken), what);
    }

    [Theory]
    [InlineData(60, 9)]
    [InlineData(66, 6)]
    [InlineData(68, 12)]
    public void A_window_that_reaches_near_the_rim_keeps_a_level_rim_beside_it(int circle, int window)
    {
        WrittenBoard wide = Lamp with { Pixels = $"{{package: \"2020\", circle: {circle}, count: 24, from: 90, direction: cw}}" };
        HousingPlan plan = Planned(wide, "soft", $"housing.light={{window: {window}}}", "housing.diffuser={distance: 14}");
        double least = plan.Cover.Window.Loops.SelectMany(loop => loop).Min(plan.Shell.Footprint.DistanceToOutline);
        Assert.True(plan.Cover.FrontEdge!.Inset + 0.85 < least, $"{plan.Cover.FrontEdge.Inset} beside {least}");
    }

    [Theory]
    [InlineData("usb-c-receptacle")]
    [InlineData("micro-b-receptacle")]
    public void The_floor_s_edge_ends_below_openings_in_the_wall(string package)
    {
        WrittenBoard ported = Lamp with
        {
            Parts = [$"{{ref: J1, package: {package}, side: bottom, faces: 270, past-edge: 1.0}}"],
            Cable = "{part: J1}",
        };
        HousingPlan plan = Planned(ported, "12 mm", "housing.walls=12", "housing.floor=4");
        Assert.True(plan.Shell.FloorEdge!.Radius < Assert.Single(plan.Ports).InWall.Bottom);
        Assert.Contains(plan.Refusals, each => each.Rule == "edge-cut" && each.Message.Contains("J1", StringComparison.Ordinal));
    }

    [Fact]
    public void Where_no_arc_has_room_the_chamfer_stays_and_that_is_told()
    {
        HousingPlan plan = Planned(Lamp, "2 mm", "housing.walls=1", "housing.floor=0.8");
        Assert.Null(plan.Shell.FloorEdge);
        PlanRefusal told = Assert.Single(plan.Refusals, each => each is { Rule: "edge-without-room", Subject: PartNames.Tub });
        Assert.Empty(MessageStyle.Faults(told.Message, told.Remedy));
        Assert.Equal("chamfer", Said(plan, "edge.floor").Value);
    }

    [Fact]
    public void In_the_bore_edges_give_way_to_what_lies_there_and_the_outer_ones_do_not()
    {
        WrittenBoard ring = Lamp with
        {
            Outline = "{ring: {outer: 110, bore: 60}}",
            Holes = ["{circle: 74, count: 4, from: 45, diameter: 2.7}"],
            Pixels = "{package: \"2020\", circle: 92, count: 24, from: 90, direction: cw}",
            Closure = "screws",
        };
        HousingPlan screwed = Planned(ring, "soft", "housing.walls=6");
        HousingPlan snapped = Planned(ring, "soft", "housing.walls=6", "housing.closure=snap");
        Assert.True((screwed.Cover.FrontEdgeInBore?.Radius ?? 0) < snapped.Cover.FrontEdgeInBore!.Radius);
        Assert.Contains("the head of screw", Said(screwed, "edge.front-in-bore").Why, StringComparison.Ordinal);
        Assert.True(screwed.Cover.FrontEdge!.Radius >= 2);
        Assert.Empty(screwed.Refusals);
    }
}
