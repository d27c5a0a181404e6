using FsCheck.Xunit;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Housing.Features;
using ShellForge.Planning.Outlines;

namespace ShellForge.Housing.Tests;

public class RoofedOpeningTests
{
    private const double Hair = 0.001;

    [Property(MaxTest = 60)]
    public void No_side_leans_farther_out_than_the_slant_but_the_level_roof(byte w, byte h, byte r, byte o)
    {
        double width = 3 + (w / 10.0);
        double height = 3 + (h / 20.0);
        double radius = Math.Min(width, height) / 2 * r / 255;
        var slant = RoofSlant.For(30 + (o % 31));
        var middle = new Point2(1.5, 8);
        Region opening = RoofedOpening.Of(middle, width, height, radius, slant);
        Region round = Region.RoundedRectangle(middle, width, height, radius);

        // What the opening is for passes, and no more than the corners is taken beyond it.
        Assert.True(round.Less(opening).Area < Hair, "the rounded rectangle passes");
        Assert.Equal(width, opening.Bounds.Size.X, 2 * Tolerances.ChordError);
        Assert.Equal(height, opening.Bounds.Size.Y, 2 * Tolerances.ChordError);
        double beside = 1 - (Math.PI / 4) - (slant.Across * slant.Up / 2);
        Assert.True(opening.Area - round.Area <= (2 * beside * radius * radius) + (0.02 * round.Perimeter),
            "two corners' difference at most");

        Point2[] corners = [.. Assert.Single(opening.Loops)];
        for (int i = 0; i < corners.Length; i++)
        {
            Point2 side = corners[(i + 1) % corners.Length] - corners[i];
            bool roof = corners[i].Y > middle.Y + Hair && corners[(i + 1) % corners.Length].Y > middle.Y + Hair;
            if (roof && Math.Abs(side.Y) > Hair)
            {
                Assert.True(Math.Abs(side.X) <= Math.Abs(side.Y) * slant.Lean.Sin / slant.Lean.Cos * 1.001, $"{corners[i]} {side}");
            }
        }
    }

    [Fact]
    public void Corners_finer_than_the_lattice_can_turn_are_left_square() =>
        No_side_leans_farther_out_than_the_slant_but_the_level_roof(0, 0, 1, 7);

    [Fact]
    public void At_45_degrees_of_overhang_slants_lean_42_degrees_and_touch_the_arc()
    {
        // A circle of radius 5: the slant's legs are 0.5548 and 0.6161 of it.
        Region opening = RoofedOpening.Of(new Point2(0, 0), 10, 10, 5, RoofSlant.For(45));
        Assert.Contains(opening.Loops[0], corner => Math.Abs(corner.X - (5 - 2.774)) < 0.01 && Math.Abs(corner.Y - 5) < 0.01);
        Assert.Contains(opening.Loops[0], corner => Math.Abs(corner.X - 5) < 0.01 && Math.Abs(corner.Y - (5 - 3.0805)) < 0.01);
    }
}
