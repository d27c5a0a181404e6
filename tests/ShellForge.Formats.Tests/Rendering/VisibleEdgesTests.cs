using System.Collections.Immutable;
using ShellForge.Formats.Rendering;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Testing;

namespace ShellForge.Formats.Tests.Rendering;

public sealed class VisibleEdgesTests
{
    // The eye looks along +y.
    private static ImmutableArray<(Point2 From, Point2 To)> Seen(params Solid[] bodies) =>
        VisibleEdges.Behind(bodies.Select(Meshes.Of), new Point3(1, 0, 0), new Point3(0, 0, 1));

    private static bool Has(IEnumerable<(Point2 From, Point2 To)> lines, double x0, double y0, double x1, double y1) => lines.Any(line =>
        Point2.Distance(line.From, new Point2(x0, y0)) < 0.25 && Point2.Distance(line.To, new Point2(x1, y1)) < 0.25);

    [Fact]
    public void A_nearer_body_hides_what_lies_behind_it_and_what_stands_before_the_cut_is_not_drawn()
    {
        Solid far = Shapes.Box(new(-10, 10, 0), new(10, 12, 10));
        Solid near = Shapes.Box(new(-2, 2, -5), new(2, 4, 5));
        Solid before = Shapes.Box(new(-1, -9, -20), new(1, -8, 20));

        ImmutableArray<(Point2 From, Point2 To)> lines = Seen(far, near, before);

        // Left and right of the near one, and over it, the far one; the near one whole.
        Assert.True(Has(lines, -10, 0, -2, 0) && Has(lines, 2, 0, 10, 0) && Has(lines, -10, 10, 10, 10), string.Join('\n', lines));
        Assert.True(Has(lines, -10, 0, -10, 10) && Has(lines, 10, 0, 10, 10));
        Assert.True(Has(lines, -2, -5, -2, 5) && Has(lines, 2, -5, 2, 5) && Has(lines, -2, 5, 2, 5) && Has(lines, -2, -5, 2, -5));
        Assert.Equal(9, lines.Length);
    }

    [Fact]
    public void A_rim_seen_from_the_side_is_one_line_and_a_round_wall_ends_at_its_limbs()
    {
        Solid pin = Shapes.Extrude(Region.Disc(new Point2(0, 20), Ring.Peg(6)), 0, 8);

        ImmutableArray<(Point2 From, Point2 To)> lines = Seen(pin);

        Assert.True(Has(lines, -6, 0, 6, 0) && Has(lines, -6, 8, 6, 8) && Has(lines, -6, 0, -6, 8) && Has(lines, 6, 0, 6, 8),
            string.Join('\n', lines));
        Assert.Equal(4, lines.Length);
    }

    [Fact]
    public void A_body_that_the_plane_cuts_shows_what_is_behind_the_plane()
    {
        // A tube cut along its axis: the far half of its rims, and inside nothing else.
        Ring rim = Ring.Peg(10);
        ImmutableArray<(Point2 From, Point2 To)> lines = Seen(Shapes.Extrude(Region.Annulus(rim, rim.Coaxial(7, RingSide.Outside)), 0, 5));

        Assert.True(lines.Any(line => Math.Abs(line.From.Y) < 0.02 && Math.Abs(line.To.Y) < 0.02 && line.To.X - line.From.X > 13.5),
            string.Join('\n', lines));
        Assert.All(lines, line => Assert.True(Math.Abs(line.From.X) < 10.1 && line.From.Y is > -0.1 and < 5.1));
    }
}
