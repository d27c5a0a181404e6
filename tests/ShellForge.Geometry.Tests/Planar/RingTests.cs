using FsCheck.Xunit;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Geometry.Tests.Planar;

public sealed class RingTests
{
    [Property(MaxTest = 200)]
    public void An_inscribed_ring_has_no_corner_outside_its_circle_and_a_circumscribed_one_no_side_inside(ushort size, byte corners,
        short phase)
    {
        double radius = 0.05 + (size / 400.0);
        int count = 3 + corners;
        Angle first = Angle.FromDegrees(phase / 7.0);
        var inside = new Ring(radius, RingSide.Inside, count, first);
        Assert.All(inside.Points, p => Assert.True(p.Length <= radius + 1e-12));
        if (radius / Angle.FromDegrees(180.0 / count).Cos > 255)
        {
            return;
        }

        var outside = new Ring(radius, RingSide.Outside, count, first);
        for (int i = 0; i < count; i++)
        {
            Point2 a = outside.Points[i];
            Point2 along = outside.Points[(i + 1) % count] - a;
            double fromAxis = Point2.Cross(along, Point2.Origin - a) / along.Length;
            Assert.True(fromAxis >= radius - Lattice.Step, $"{radius - fromAxis} at side {i} of {count}");
        }
    }

    [Fact]
    public void A_quarter_turn_maps_a_ring_onto_itself_to_the_bit()
    {
        var ring = new Ring(17.3, RingSide.Outside, 48, Angle.FromDegrees(3.7));
        for (int i = 0; i < 48; i++)
        {
            Point2 p = ring.Points[i];
            Assert.Equal(new Point2(-p.Y, p.X), ring.Points[(i + 12) % 48]);
        }
    }

    [Theory]
    [InlineData(1, 32)]
    [InlineData(8.3, 64)]
    [InlineData(75, 196)]
    public void The_count_follows_from_the_chord_error(double radius, int expected)
    {
        Assert.Equal(expected, Ring.CountFor(radius));
        Assert.True(radius * (1 - Angle.FromDegrees(180.0 / expected).Cos) <= Tolerances.ChordError);
    }

    [Fact]
    public void Rings_are_equal_by_what_they_say_and_share_corners_once_worked_out()
    {
        var first = new Ring(5, RingSide.Inside, 32, Angle.Zero);
        var second = new Ring(5, RingSide.Inside, 32, Angle.Zero);
        _ = first.Points;
        Assert.Equal(first, second);
        Assert.Equal(first.GetHashCode(), second.GetHashCode());
        Assert.NotEqual(first, first.Coaxial(5, RingSide.Outside));
        Assert.Same(System.Runtime.InteropServices.ImmutableCollectionsMarshal.AsArray(first.Points),
            System.Runtime.InteropServices.ImmutableCollectionsMarshal.AsArray(first.Points));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(300)]
    public void A_ring_that_cannot_exist_is_refused(double radius) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new Ring(radius, RingSide.Inside, 32, Angle.Zero));
}
