using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Checks.Tests.Print;

public class ThinFeaturesTests
{
    private const double Line = 0.45;

    [Theory]
    [InlineData(0.30, true)]
    [InlineData(0.39, true)]
    [InlineData(0.45, false)]
    [InlineData(0.90, false)]
    public void A_free_wall_vanishes_below_a_line(double thickness, bool vanishes) =>
        Assert.Equal(vanishes, !ThinFeatures.Narrower(Rectangle(0, 0, 30, thickness), Line - PrintTolerances.Width).IsEmpty);

    [Fact]
    public void A_thin_wall_on_a_body_is_found_with_its_width_and_length()
    {
        Region body = Rectangle(0, 0, 20, 20).And(Rectangle(20, 9, 32, 9.39));
        FineFeature fine = Assert.Single(ThinFeatures.Narrower(body, Line - PrintTolerances.Width));
        Assert.Equal(0.39, fine.Width, 0.02);
        Assert.Equal(12, fine.Length, 0.6);
        Assert.InRange(fine.At.X, 20, 32);
    }

    [Theory]
    [InlineData(1.6, 0.1, false)]
    [InlineData(4.0, 0.1, true)]
    [InlineData(1.6, 0.3, true)]
    public void A_sliver_of_less_than_a_lines_square_is_the_roughness_of_an_edge(double length, double width, bool found)
    {
        Region body = Rectangle(0, 0, 20, 20).And(Rectangle(20, 9, 20 + length, 9 + width));
        Assert.Equal(found, !ThinFeatures.Narrower(body, Line - PrintTolerances.Width).IsEmpty);
    }

    [Fact]
    public void Corners_are_not_taken_for_thin_walls() =>
        Assert.Empty(ThinFeatures.Narrower(Region.Polygon([new Point2(0, 0), new Point2(20, 0), new Point2(3, 14)]), Line));

    [Theory]
    [InlineData(0.4, true)]
    [InlineData(0.8, false)]
    public void A_pin_finer_than_a_line_vanishes_whole(double diameter, bool vanishes) =>
        Assert.Equal(vanishes,
            !ThinFeatures.Narrower(Region.Disc(new Point2(3, 3), Ring.Peg(diameter / 2)), Line - PrintTolerances.Width).IsEmpty);

    [Theory]
    [InlineData(0.15, true)]
    [InlineData(0.40, false)]
    public void A_slot_closes_below_half_a_line(double width, bool closes)
    {
        Region plate = Rectangle(0, 0, 20, 20).Less(Rectangle(5, 10, 15, 10 + width));
        Assert.Equal(closes, !ThinFeatures.Gaps(plate, Line / 2).IsEmpty);
    }

    [Property(MaxTest = 40)]
    public Property The_point_told_lies_in_the_feature()
    {
        Gen<double> turn = Gen.Choose(0, 359).Select(n => (double)n);
        return Prop.ForAll(turn.ToArbitrary(), degrees =>
        {
            Region wall = Rectangle(0, 0, 20, 20).And(Rectangle(19, 9, 32, 9.3)).Turned(Angle.FromDegrees(degrees));
            FineFeature fine = ThinFeatures.Narrower(wall, Line).Single();
            return wall.Contains(fine.At) && fine.At.Turned(Angle.FromDegrees(-degrees)).X > 18;
        });
    }

    private static Region Rectangle(double x0, double y0, double x1, double y1) => Region.Rectangle(new Point2(x0, y0), new Point2(x1, y1));
}
