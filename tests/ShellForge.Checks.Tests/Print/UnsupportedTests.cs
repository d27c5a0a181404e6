using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Checks.Tests.Print;

public class UnsupportedTests
{
    private const double Layer = 0.2;
    private const double Line = 0.45;

    [Theory]
    [InlineData(44, false)]
    [InlineData(46, true)]
    public void A_cone_that_widens_upward_is_judged_by_its_angle(double degrees, bool over)
    {
        double grow = Layer * Math.Tan(degrees * Math.PI / 180);
        for (int i = 0; i < 10; i++)
        {
            Region below = Disc(8 + (i * grow));
            Assert.Equal(over, !Unsupported.Of(Disc(8 + ((i + 1) * grow)), below, Layer, Line).IsEmpty);
        }
    }

    [Theory]
    [InlineData(6)]
    [InlineData(10.5)]
    [InlineData(21)]
    public void A_roof_between_two_walls_is_a_bridge_of_its_span(double span)
    {
        Region walls = Rectangle(0, 0, 4, 20).And(Rectangle(4 + span, 0, 8 + span, 20));
        UnsupportedPiece piece = Assert.Single(Unsupported.Of(Rectangle(0, 0, 8 + span, 20), walls, Layer, Line));
        Assert.Equal(Hold.Bridge, piece.Hold);
        Assert.Equal(span - (2 * Layer), piece.Reach, 0.1);
    }

    [Fact]
    public void A_bridge_is_laid_across_the_narrow_way()
    {
        Region frame = Rectangle(0, 0, 40, 14).Less(Rectangle(3, 3, 37, 11));
        UnsupportedPiece piece = Assert.Single(Unsupported.Of(Rectangle(0, 0, 40, 14), frame, Layer, Line));
        Assert.Equal(Hold.Bridge, piece.Hold);
        Assert.Equal(8 - (2 * Layer), piece.Reach, 0.1);
    }

    [Fact]
    public void The_roof_of_a_notch_in_a_curved_wall_is_a_bridge_along_the_wall()
    {
        Region wall = Disc(44).Less(Disc(42.8));
        Region notch = Region.Sector(40, 46, Angle.FromDegrees(-8), Angle.FromDegrees(16));
        UnsupportedPiece piece = Assert.Single(Unsupported.Of(wall, wall.Less(notch), Layer, Line));
        Assert.Equal(Hold.Bridge, piece.Hold);
        Assert.Equal(43.4 * 16 * Math.PI / 180, piece.Reach, 1.5);
    }

    // Hairs along a wall's faces, left by taking its free part out of it, once held the roof across the wall.
    [Theory]
    [InlineData(77.5, 5.2)]
    [InlineData(40.3, 4.1)]
    [InlineData(155.1, 9)]
    public void The_roof_of_an_opening_in_a_curved_wall_is_a_bridge_as_long_as_the_opening_is_wide(double radius, double width)
    {
        Ring outer = Ring.Hole(radius);
        Region wall = Region.Annulus(outer, outer.Coaxial(radius - 1.68, RingSide.Inside));
        foreach (double turn in new[] { 0.0, -90, 31 })
        {
            Region opening = Region.Rectangle(new Point2(radius - 5, -width / 2), new Point2(radius + 5, width / 2))
                .Turned(Angle.FromDegrees(turn));
            UnsupportedPiece piece = Assert.Single(Unsupported.Of(wall, wall.Less(opening), Layer, Line));
            Assert.Equal(Hold.Bridge, piece.Hold);
            Assert.Equal(width - (2 * Layer), piece.Reach, 0.35);
        }
    }

    [Fact]
    public void A_balcony_is_no_bridge()
    {
        UnsupportedPiece piece = Assert.Single(Unsupported.Of(Rectangle(0, 0, 20, 5), Rectangle(0, 0, 12, 5), Layer, Line));
        Assert.Equal(Hold.Cantilever, piece.Hold);
        Assert.Equal(8, piece.Reach, 0.05);
    }

    [Fact]
    public void A_post_that_starts_in_the_air_is_an_island()
    {
        UnsupportedPiece piece =
            Assert.Single(Unsupported.Of(Rectangle(0, 0, 5, 5).And(Rectangle(9, 0, 11, 3)), Rectangle(0, 0, 5, 5), Layer, Line));
        Assert.Equal(Hold.None, piece.Hold);
        Assert.Equal(3, piece.Reach, 0.01);
    }

    [Fact]
    public void The_ring_over_a_counterbore_is_held_from_one_side_only()
    {
        Region plate = Disc(12).Less(Disc(4));
        UnsupportedPiece piece = Assert.Single(Unsupported.Of(Disc(12).Less(Disc(2)), plate, Layer, Line));
        Assert.Equal(Hold.Cantilever, piece.Hold);
        Assert.Equal(2, piece.Reach, 0.05);
    }

    [Fact]
    public void What_equals_the_layer_below_needs_nothing() =>
        Assert.Empty(Unsupported.Of(Disc(12), Disc(12), Layer, Line));

    private static Region Disc(double radius) => Region.Disc(Point2.Origin, new Ring(radius, RingSide.Inside, 128, Angle.Zero));

    private static Region Rectangle(double x0, double y0, double x1, double y1) => Region.Rectangle(new Point2(x0, y0), new Point2(x1, y1));

    // A layer that a quick look lets pass has nothing that subtraction would find, up to pieces shorter than the step.
    [Property(MaxTest = 60)]
    public Property What_a_quick_look_lets_pass_is_carried()
    {
        Gen<Region> section =
            from parts in (
                from x in Gen.Choose(-60, 60)
                from y in Gen.Choose(-60, 60)
                from size in Gen.Choose(2, 60)
                from adds in Gen.Elements(true, true, false)
                select (Add: adds,
                    Shape: Region.Rectangle(new Point2(x / 5.0, y / 5.0), new Point2((x + size) / 5.0, (y + size + 7) / 5.0)))).ListOf(4)
            select parts.Aggregate(Region.Disc(Point2.Origin, Ring.Hole(9)),
                (all, part) => part.Add ? all.And(part.Shape) : all.Less(part.Shape));
        Gen<double> growth = Gen.Elements(0.0, 0.05, 0.19, 0.25, 1.0);
        return Prop.ForAll(
            (from a in section
             from b in section
             from grow in growth
             from same in Gen.Elements(true, true, false)
             select (Below: a,
                Layer: same ? a.Grown(grow) : b)).ToArbitrary(), pair =>
        {
            const double step = 0.2;
            Region free = pair.Layer.Less(pair.Below.Grown(step));
            bool carried = Carried.IsAll(pair.Layer, pair.Below, step);
            return carried ? free.IsEmpty || free.Parts.All(part => part.Bounds.Size.X < 2 * step && part.Bounds.Size.Y < 2 * step) : true;
        });
    }

    [Fact]
    public void A_quick_look_sees_a_closed_hole_a_bridge_and_an_island()
    {
        Region plate = Region.Rectangle(new Point2(-10, -10), new Point2(10, 10));
        Region hole = Region.Rectangle(new Point2(-3, -3), new Point2(3, 3));
        Assert.False(Carried.IsAll(plate, plate.Less(hole), 0.2));
        Assert.False(Carried.IsAll(plate.Less(hole).And(Region.Rectangle(new Point2(-1, -4), new Point2(1, 4))), plate.Less(hole), 0.2));
        Assert.False(Carried.IsAll(plate.And(Region.Rectangle(new Point2(20, 0), new Point2(22, 2))), plate, 0.2));
        Assert.True(Carried.IsAll(plate.Less(hole.Grown(0.5)), plate.Less(hole), 0.2));
        Assert.True(Carried.IsAll(plate.Grown(0.15), plate, 0.2));
    }
}
