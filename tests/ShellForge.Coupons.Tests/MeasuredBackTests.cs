using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Posts;

namespace ShellForge.Coupons.Tests;

/// <summary>The steps of each kind, measured back from its file by sections: within a hundredth of what its figures say.</summary>
public sealed class MeasuredBackTests
{
    private const double Hundredth = 0.01;

    [Theory]
    [InlineData("m2x3-od3.0")]
    [InlineData("m2.5x4-od4.6")]
    [InlineData("m3x5.7-od4.6")]
    public void Insert_holes_have_the_diameter_of_their_figures(string insert)
    {
        MadeCoupon made = Samples.Make("insert-holes", Samples.Wish(insert: insert));
        MadePiece piece = made.Pieces.Single();
        double depth = InsertHoleDecision.Depth(made.Coupon.Wish.Insert!, made.Coupon.Wish.Basis);
        double top = Measure.Bounds(piece.Mesh).Max.Z;
        Region section = Slicing.At(Samples.Written(piece), top - (depth / 2));
        Assert.Equal(8, piece.Piece.Steps.Length);
        foreach (CouponStep step in piece.Piece.Steps)
        {
            double drawn = 2 * HoleRadius(section, made.Coupon.WrittenScale * step.At) / made.Coupon.WrittenScale;
            Assert.InRange(drawn, step.Value - 0.001, step.Value + Hundredth);
        }

        Assert.True(Slicing.At(Samples.Written(piece), top - depth - 0.1).Contains(made.Coupon.WrittenScale * piece.Piece.Steps[0].At),
            "the hole is not closed below");
    }

    [Theory]
    [InlineData(null)]
    [InlineData(0.875)]
    public void Rings_and_lid_differ_by_the_gap_of_their_figures(double? around)
    {
        MadeCoupon made = Samples.Make("lid-fit", Samples.Wish() with { Around = around });
        double scale = made.Coupon.WrittenScale;
        Mesh lid = Samples.Written(made.Pieces[1]);
        double lip = OuterRadius(Slicing.At(lid, Measure.Bounds(lid).Max.Z - 0.5)) / scale;
        Region rings = Slicing.At(Samples.Written(made.Pieces[0]), Measure.Bounds(made.Pieces[0].Mesh).Max.Z - 0.5);
        foreach (CouponStep step in made.Pieces[0].Piece.Steps)
        {
            double gap = (HoleRadius(rings, scale * step.At) / scale) - lip;
            Assert.InRange(gap, step.Value - Hundredth, step.Value + Hundredth);
        }
    }

    [Theory]
    [InlineData(null)]
    [InlineData(0.875)]
    public void Slots_and_tongue_differ_by_the_gap_of_their_figures(double? around)
    {
        MadeCoupon made = Samples.Make("slot-fit", Samples.Wish() with { Around = around });
        double scale = made.Coupon.WrittenScale;
        Mesh gauge = Samples.Written(made.Pieces[1]);
        Box2 tongue = Slicing.At(gauge, Measure.Bounds(gauge).Max.Z - 0.5).Bounds;
        Region slots = Slicing.At(Samples.Written(made.Pieces[0]), Measure.Bounds(made.Pieces[0].Mesh).Max.Z - 0.5);
        foreach (CouponStep step in made.Pieces[0].Piece.Steps)
        {
            double gap = ((2 * slots.DistanceToOutline(scale * step.At)) - (tongue.Max.Y - tongue.Min.Y)) / 2 / scale;
            Assert.InRange(gap, step.Value - Hundredth, step.Value + Hundredth);
        }
    }

    [Theory]
    [InlineData("fdm-0.4", 100)]
    [InlineData("fdm-0.6", 100)]
    public void The_size_bar_has_the_sizes_that_are_asked_for(string printer, double length)
    {
        MadeCoupon made = Samples.Make("size-bar", Samples.Wish(printer));
        Assert.Equal(1, made.Coupon.WrittenScale);
        Mesh mesh = Samples.Written(made.Pieces.Single());
        Region section = Slicing.At(mesh, 1.2);
        Assert.Equal(length, section.Bounds.Max.X - section.Bounds.Min.X, Hundredth);
        Assert.Equal(length, section.Bounds.Max.Y - section.Bounds.Min.Y, Hundredth);
        foreach (CouponStep step in made.Pieces.Single().Piece.Steps)
        {
            double size = 2 * HoleRadius(section, step.At);
            Assert.InRange(size, step.Value - 0.001, step.Value + Hundredth);
        }

        // Across each arm near its end.
        Region end = section.Intersect(Region.Rectangle(new Point2(section.Bounds.Max.X - 2, -200), new Point2(200, 200)));
        Assert.Equal(12, end.Bounds.Max.Y - end.Bounds.Min.Y, Hundredth);

        // Edges that lie on the bed are drawn back, where the first layers spread.
        Region foot = Slicing.At(mesh, 0.05);
        Assert.InRange(section.Bounds.Max.X - foot.Bounds.Max.X, 0.3, 0.4);
    }

    [Theory]
    [InlineData("fdm-0.4")]
    [InlineData("fdm-0.6")]
    public void Windows_of_the_diffuser_strip_are_as_thick_as_their_figures(string printer)
    {
        MadeCoupon made = Samples.Make("diffuser-steps", Samples.Wish(printer, "petg-white"));
        Mesh mesh = Samples.Written(made.Pieces.Single());
        Assert.True(made.Pieces.Single().Piece.Steps.Length >= 4);
        foreach (CouponStep step in made.Pieces.Single().Piece.Steps)
        {
            Point2 at = made.Coupon.WrittenScale * step.At;
            Assert.True(Slicing.At(mesh, step.Value - (Hundredth / 2)).Contains(at), step.Mark);
            Assert.False(Slicing.At(mesh, step.Value + (Hundredth / 2)).Contains(at), step.Mark);
        }
    }

    // From a hole's middle to its outline.
    private static double HoleRadius(Region section, Point2 at)
    {
        Assert.False(section.Contains(at), "there is no hole");
        return section.DistanceToOutline(at);
    }

    private static double OuterRadius(Region section) => section.Loops[0].Max(p => Point2.Distance(p, Point2.Origin));
}
