using FsCheck.Xunit;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Testing;

namespace ShellForge.Geometry.Tests.Planar;

public sealed class RegionTests
{
    private static readonly Ring Rim = Ring.Peg(20);

    [Fact]
    public void An_annulus_has_the_area_of_its_rings()
    {
        Region annulus = Region.Annulus(Rim, Rim.Coaxial(12, RingSide.Outside));
        double Area(double cornerRadius) => Rim.Count * cornerRadius * cornerRadius * Angle.FromDegrees(360.0 / Rim.Count).Sin / 2;
        Assert.Equal(Area(20) - Area(12 / Angle.FromDegrees(180.0 / Rim.Count).Cos), annulus.Area, 0.005);
        Assert.Equal(2, annulus.Loops.Length);
        Assert.True(annulus.Contains(new Point2(15, 3)));
        Assert.False(annulus.Contains(new Point2(3, 3)));
        Assert.Equal(12 - Math.Sqrt(18), annulus.Distance(new Point2(3, 3)), 0.02);
    }

    [Fact]
    public void Outlines_run_counter_clockwise_and_holes_clockwise_from_the_smallest_corner()
    {
        Region plate = Region.Polygon(
            [new(9, 0), new(9, 9), new(0, 9), new(0, 0), new(4, 0)], new Point2[] { new(2, 2), new(4, 2), new(4, 4), new(2, 4) });
        Assert.Equal<Point2>([new(0, 0), new(9, 0), new(9, 9), new(0, 9)], plate.Loops[0]);
        Assert.Equal<Point2>([new(2, 2), new(2, 4), new(4, 4), new(4, 2)], plate.Loops[1]);
    }

    [Fact]
    public void An_outline_that_crosses_itself_is_refused_with_its_place()
    {
        ArgumentException e = Assert.Throws<ArgumentException>(() => Region.Polygon([new(0, 0), new(4, 4), new(4, 0), new(0, 4)]));
        Assert.Contains("(2, 2)", e.Message, StringComparison.Ordinal);
    }

    [Property(MaxTest = 60)]
    public void Union_and_intersection_have_the_area_of_both(short dx, short dy, byte turn)
    {
        // Offsets of a few steps, quarter turns and coincident sides are the hard cases.
        Region a = Region.RoundedRectangle(Point2.Origin, 20, 12, 3);
        Region b = Region.Rectangle(new(-10, -6), new(10, 6)).Turned(Angle.FromDegrees(90 * (turn % 5 / 2.0)))
            .Moved(new Point2((dx % 3) * Lattice.Step, (dy % 7) * 1.0));
        Region union = a.And(b);
        Region common = a.Intersect(b);
        double slack = (a.Perimeter + b.Perimeter) * Lattice.Step;
        Assert.Equal(a.Area + b.Area, union.Area + common.Area, slack);
        Assert.Equal(a.Area - common.Area, a.Less(b).Area, slack);
        Assert.All(union.Loops.Concat(common.Loops).SelectMany(l => l), p => Assert.Equal(Lattice.Snap(p), p));
        Assert.Equal(Region.Union(b, a), Region.Union(a, b));
    }

    [Theory]
    [InlineData(0.3)]
    [InlineData(0.6)]
    [InlineData(1.2)]
    [InlineData(-0.3)]
    [InlineData(-0.6)]
    [InlineData(-1.2)]
    public void An_offset_of_about_a_step_is_that_or_none(double steps)
    {
        // Bands as thin as that fold onto the outline or onto themselves in part.
        foreach (double radius in new[] { 0.0003, 0.02, 1, 20 })
        {
            Region shape = Region.Disc(Point2.Origin, Ring.Peg(radius))
                .Less(Region.Rectangle(new(radius / 3, radius / 7), new(radius * 2, radius * 2)));
            Region result = shape.Offset(steps * Lattice.Step);
            double most = (Math.Abs(steps) + 1) * 1.5 * Lattice.Step * shape.Perimeter;
            Assert.InRange(Math.Sign(steps) * (result.Area - shape.Area), 0, most);
            Assert.True(steps > 0 ? shape.Less(result).IsEmpty : result.Less(shape).IsEmpty);
        }
    }

    [Property(MaxTest = 60, Arbitrary = [typeof(Draws.Rows)])]
    public void An_offset_outline_lies_at_its_distance(Draws draws, bool grow)
    {
        Region shape = Region.Union(Enumerable.Range(0, 4).Select(_ => Region.RoundedRectangle(
            new Point2((draws.NextDouble() * 20) - 10, (draws.NextDouble() * 20) - 10), 4 + (draws.NextDouble() * 9),
            3 + (draws.NextDouble() * 9), draws.Next(2))));
        double distance = (grow ? 1 : -1) * (0.05 + (draws.NextDouble() * 2));
        Region result = shape.Offset(distance);
        foreach (Point2 p in result.Loops.SelectMany(l => l.Select((q, i) => 0.5 * (q + l[(i + 1) % l.Length])).Concat(l)))
        {
            Assert.Equal(grow, !shape.Contains(p));
            Assert.Equal(Math.Abs(distance), shape.DistanceToOutline(p), Tolerances.ChordError + (3 * Lattice.Step));
        }

        // Nothing is missing: points well within the distance are in, points well beyond it are out.
        for (int i = 0; i < 200; i++)
        {
            Point2 p = new((draws.NextDouble() * 40) - 20, (draws.NextDouble() * 40) - 20);
            double depth = shape.DistanceToOutline(p) * (shape.Contains(p) ? -1 : 1);
            if (Math.Abs(depth - distance) > 2 * Tolerances.ChordError)
            {
                Assert.Equal(depth < distance, result.Contains(p));
            }
        }
    }

    [Property(MaxTest = 40, Arbitrary = [typeof(Draws.Rows)])]
    public void Nearness_to_an_outline_agrees_with_its_distance_in_whatever_order_places_are_asked_for(Draws draws)
    {
        Region shape = Region.Union(Enumerable.Range(0, 5).Select(_ => Region.Disc(
            new Point2((draws.NextDouble() * 30) - 15, (draws.NextDouble() * 30) - 15), Ring.Peg(1 + (draws.NextDouble() * 8)))));
        for (int i = 0; i < 300; i++)
        {
            Point2 p = new((draws.NextDouble() * 50) - 25, (draws.NextDouble() * 50) - 25);
            double distance = shape.DistanceToOutline(p);
            Assert.True(shape.IsNearOutline(p, distance * 1.0001));
            Assert.False(shape.IsNearOutline(p, distance * 0.9999));
        }
    }

    [Theory]
    [InlineData(0, 8)]
    [InlineData(90, 3)]
    [InlineData(180, 5)]
    [InlineData(45, 4.242640687)]
    public void The_farthest_crossing_of_a_ray_lies_behind_holes_and_gaps(double degrees, double distance)
    {
        Region region = Region.Rectangle(new Point2(-5, -3), new Point2(6, 3)).Less(Region.Rectangle(new Point2(-1, -1), new Point2(2, 1)))
            .And(Region.Rectangle(new Point2(7, -1), new Point2(8, 1)));
        Assert.Equal(distance, region.FarthestAlong(Angle.FromDegrees(degrees)), 6);
        Assert.Equal(0, Region.Rectangle(new Point2(1, 1), new Point2(2, 2)).FarthestAlong(Angle.FromDegrees(200)));
    }

    [Fact]
    public void A_disc_shrunk_by_its_radius_is_gone()
    {
        Assert.True(Region.Disc(Point2.Origin, Ring.Peg(3)).Offset(-3.01).IsEmpty);
        Assert.Equal(Math.PI * 25, Region.Disc(new(40, 2), Ring.Peg(3)).Offset(2).Area, 0.3);
    }

    [Fact]
    public void A_slot_lets_its_width_pass_and_a_plug_stays_within()
    {
        Region slot = Region.Slot(new(1, 1), new(9, 4), 3);
        Assert.True(slot.Contains(Region.Disc(new(1, 1), Ring.Peg(1.5)).Offset(-0.0001)));
        Region plug = Region.RoundedRectangle(new(5, 5), 8, 3.2, 1.6);
        Assert.True(Region.RoundedRectangle(new(5, 5), 8, 3.2, 1.6, RingSide.Outside).Contains(plug));
        Assert.Equal(8, plug.Bounds.Size.X, 1e-4);
    }

    [Fact]
    public void A_sector_is_its_share_of_the_annulus()
    {
        Region sector = Region.Sector(10, 20, Angle.FromDegrees(-30), Angle.FromDegrees(60));
        Assert.Equal(Math.PI * 300 / 6, sector.Area, 0.15);
        Assert.True(sector.Contains(new Point2(15, 0)));
        Assert.False(sector.Contains(new Point2(-15, 0)));
        Assert.Equal(Math.PI * 400 / 4, Region.Sector(0, 20, Angle.Zero, Angle.FromDegrees(90)).Area, 0.3);
    }

    [Fact]
    public void Connected_parts_come_apart_in_a_fixed_order()
    {
        Region two = Region.Rectangle(new(5, 0), new(6, 1)).And(Region.Rectangle(new(0, 0), new(1, 1)));
        Assert.Equal([0, 5], two.Parts.Select(p => p.Bounds.Min.X));
        Assert.Equal(4, Region.Rectangle(new(0, 0), new(1, 1)).Distance(Region.Rectangle(new(5, 0), new(6, 1))));
    }

    [Fact]
    public void Moving_by_whole_steps_changes_nothing_but_the_place()
    {
        Region shape = Region.Slot(new(0, 0), new(3, 5), 2);
        Point2 shift = new(37 * Lattice.Step, -12);
        Assert.Equal(shape, shape.Moved(shift).Moved(new Point2(0 - shift.X, 0 - shift.Y)));
        Assert.Equal(shape.Area, shape.Moved(shift).Area);
        Assert.Equal(shape, shape.Turned(Angle.FromDegrees(90)).Turned(Angle.FromDegrees(270)));
    }
}
