using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Testing;

namespace ShellForge.Geometry.Tests.Measuring;

public class SlicingTests
{
    private static readonly Region Washer = Region.Annulus(new Ring(20, RingSide.Outside, 96, Angle.Zero),
        new Ring(12, RingSide.Inside, 96, Angle.Zero));

    [Theory]
    [InlineData(0)]
    [InlineData(2.5)]
    [InlineData(4.9999)]
    public void Every_section_of_an_extrusion_is_its_region(double z) =>
        Assert.Equal(Washer, Slicing.At(Meshes.Of(Shapes.Extrude(Washer, 0, 5)), z));

    [Theory]
    [InlineData(-0.001)]
    [InlineData(5)]
    [InlineData(7)]
    public void Below_and_above_there_is_nothing(double z) =>
        Assert.True(Slicing.At(Meshes.Of(Shapes.Extrude(Washer, 0, 5)), z).IsEmpty);

    [Fact]
    public void A_face_at_the_height_asked_for_belongs_to_what_stands_on_it()
    {
        Mesh steps = Mesh.Joined([
            Meshes.Of(Shapes.Box(new Point3(0, 0, 0), new Point3(10, 10, 3))),
            Meshes.Of(Shapes.Box(new Point3(20, 0, 3), new Point3(24, 4, 6)))]);
        Assert.Equal(16, Slicing.At(steps, 3).Area, 9);
    }

    [Fact]
    public void A_cavity_is_a_hole_in_the_section()
    {
        Mesh hollow = Mesh.Joined([
            Meshes.Of(Shapes.Box(new Point3(0, 0, 0), new Point3(10, 10, 10))),
            Meshes.Inverted(Meshes.Of(Shapes.Box(new Point3(2, 2, 2), new Point3(6, 6, 6))))]);
        Assert.Equal(100 - 16, Slicing.At(hollow, 4).Area, 9);
        Assert.Equal(100, Slicing.At(hollow, 7).Area, 9);
    }

    [Fact]
    public void The_order_in_which_heights_are_asked_for_does_not_matter()
    {
        Ring wide = Ring.Peg(10);
        Mesh cone = Meshes.Of(Shapes.Taper(wide, 0, wide.Coaxial(4, RingSide.Inside), 12, Point2.Origin));
        var upward = Slicing.Layers(cone, [1, 5, 9]);
        var downward = Slicing.Layers(cone, [9, 5, 1]);
        Assert.Equal(upward.Reverse(), downward);
    }

    [Property(MaxTest = 30)]
    public Property Areas_summed_over_height_are_the_volume()
    {
        Gen<double> radius = Gen.Choose(100, 4000).Select(n => n / 100.0);
        return Prop.ForAll(Gen.Zip(radius, radius).ToArbitrary(), pair =>
        {
            int count = Ring.CountFor(Math.Max(pair.Item1, pair.Item2));
            Mesh cone = Meshes.Of(Shapes.Taper(
                new Ring(pair.Item1, RingSide.Inside, count, Angle.Zero), 0, new Ring(pair.Item2, RingSide.Inside, count, Angle.Zero), 8,
                Point2.Origin));
            const int Count = 400;
            double[] middles = [.. Enumerable.Range(0, Count).Select(i => 8 * (i + 0.5) / Count)];
            double sum = Slicing.Layers(cone, middles).Sum(region => region.Area) * 8 / Count;
            return Math.Abs(sum - Measure.Volume(cone)) <= 1e-5 * Measure.Volume(cone);
        });
    }

    [Property(MaxTest = 60)]
    public Property A_point_is_in_the_section_when_rational_arithmetic_says_it_is_in_the_solid()
    {
        Mesh tilted =
            Meshes.Of(
                Shapes.Box(new Point3(-3, -4, -5), new Point3(3, 4, 5))
                    .Moved(Transform3.TurnX(Angle.FromDegrees(33)).Then(Transform3.TurnY(Angle.FromDegrees(21)))));
        Gen<double> place = Gen.Choose(-60, 60).Select(n => (n / 10.0) + 0.0123);
        return Prop.ForAll(place.Three().ToArbitrary(), at =>
        {
            (double x, double y, double z) = at;
            Region section = Slicing.At(tilted, z);
            var p = new Point2(Lattice.Snap(x), Lattice.Snap(y));
            bool nearEdge = !section.IsEmpty && section.DistanceToOutline(p) < 1e-4;
            double zMiddle = (Math.Floor(z * Lattice.StepsPerMillimetre) + 0.5) * Lattice.Step;
            return nearEdge || section.Contains(p) == InsideBox(p.X, p.Y, zMiddle);
        });
    }

    // The box turned back: no mesh, no code of the slicer.
    private static bool InsideBox(double x, double y, double z)
    {
        double a = -21 * Math.PI / 180, b = -33 * Math.PI / 180;
        double x1 = (x * Math.Cos(a)) + (z * Math.Sin(a)), z1 = (-x * Math.Sin(a)) + (z * Math.Cos(a));
        double y2 = (y * Math.Cos(b)) - (z1 * Math.Sin(b)), z2 = (y * Math.Sin(b)) + (z1 * Math.Cos(b));
        return Math.Abs(x1) < 3 && Math.Abs(y2) < 4 && Math.Abs(z2) < 5;
    }
}
