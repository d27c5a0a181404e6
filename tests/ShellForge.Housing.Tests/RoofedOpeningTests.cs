using FsCheck.Xunit;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Housing.Features;

namespace ShellForge.Housing.Tests;

public class RoofedOpeningTests
{
    private const double Hair = 0.001;

    [Property(MaxTest = 60)]
    public void No_side_leans_farther_out_than_45_degrees_but_the_level_roof(byte w, byte h, byte r)
    {
        double width = 3 + (w / 10.0);
        double height = 3 + (h / 20.0);
        double radius = Math.Min(width, height) / 2 * r / 255;
        var middle = new Point2(1.5, 8);
        Region opening = RoofedOpening.Of(middle, width, height, radius);
        Region round = Region.RoundedRectangle(middle, width, height, radius);

        // What the opening is for passes, and no more than the corners is taken beyond it.
        Assert.True(round.Less(opening).Area < Hair, "the rounded rectangle passes");
        Assert.Equal(width, opening.Bounds.Size.X, 2 * Tolerances.ChordError);
        Assert.Equal(height, opening.Bounds.Size.Y, 2 * Tolerances.ChordError);
        Assert.True(opening.Area - round.Area <= (2 * 0.046 * radius * radius) + (0.02 * round.Perimeter), "two corners' difference at most");

        Point2[] corners = [.. Assert.Single(opening.Loops)];
        for (int i = 0; i < corners.Length; i++)
        {
            Point2 side = corners[(i + 1) % corners.Length] - corners[i];
            bool roof = corners[i].Y > middle.Y + Hair && corners[(i + 1) % corners.Length].Y > middle.Y + Hair;
            if (roof && Math.Abs(side.Y) > Hair)
            {
                Assert.True(Math.Abs(side.X) <= Math.Abs(side.Y) * 1.001, $"{corners[i]} {side}");
            }
        }
    }
}
