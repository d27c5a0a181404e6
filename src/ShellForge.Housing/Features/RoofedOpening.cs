using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Outlines;

namespace ShellForge.Housing.Features;

/// <summary>
/// The outline of an opening in an upright wall that prints without support: round corners below, and above slants that touch
/// the arcs they stand for, up to a level roof. An arc would end as flat as the roof, each layer hanging farther out over the one before.
/// </summary>
public static class RoofedOpening
{
    // Slants on smaller corners, mm, would be lost in the rounding to the lattice, which turns them; such a corner is left square.
    private const double LeastCorner = 0.05;

    /// <summary>The outline, no smaller than the rounded rectangle.</summary>
    /// <param name="middle">The middle, mm; y is up.</param>
    /// <param name="width">Width, mm.</param>
    /// <param name="height">Height, mm.</param>
    /// <param name="radius">Corner radius, mm, up to half of the smaller of both.</param>
    /// <param name="slant">The slants above.</param>
    /// <param name="upsideDown">Whether the part is printed upside down, so that the roof is below: its slants stand below as well as
    /// above.</param>
    public static Region Of(Point2 middle, double width, double height, double radius, RoofSlant slant, bool upsideDown = false)
    {
        Region round = Region.RoundedRectangle(middle, width, height, radius, RingSide.Outside);
        Box2 box = round.Bounds;
        double slanted = radius < LeastCorner ? 0 : radius;
        double across = slant.Across * slanted;
        double side = box.Max.Y - (slant.Up * slanted);
        if (upsideDown)
        {
            double foot = box.Min.Y + (slant.Up * slanted);
            return Region.Polygon(
            [
                new Point2(box.Min.X, foot), new Point2(box.Min.X + across, box.Min.Y), new Point2(box.Max.X - across, box.Min.Y),
                new Point2(box.Max.X, foot),
                new Point2(box.Max.X, side), new Point2(box.Max.X - across, box.Max.Y), new Point2(box.Min.X + across, box.Max.Y),
                new Point2(box.Min.X, side),
            ]);
        }

        Region roof = Region.Polygon(
        [
            new Point2(box.Min.X, middle.Y), new Point2(box.Max.X, middle.Y), new Point2(box.Max.X, side),
            new Point2(box.Max.X - across, box.Max.Y), new Point2(box.Min.X + across, box.Max.Y), new Point2(box.Min.X, side),
        ]);
        return round.Intersect(Region.Rectangle(box.Min, new Point2(box.Max.X, middle.Y))).And(roof);
    }
}
