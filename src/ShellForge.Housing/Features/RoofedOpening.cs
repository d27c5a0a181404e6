using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Housing.Features;

/// <summary>
/// The outline of an opening in an upright wall that prints without support: round corners below, and above 45 degree slants that touch
/// the arcs they stand for, up to a level roof. An arc would end as flat as the roof, each layer hanging farther out over the one before.
/// </summary>
internal static class RoofedOpening
{
    // A slant at 45 degrees that touches a quarter arc of radius 1 leaves out so much of either side.
    private static readonly double SlantOfRadius = 2 - Math.Sqrt(2);

    /// <summary>The outline, no smaller than the rounded rectangle.</summary>
    /// <param name="middle">The middle, mm; y is up.</param>
    /// <param name="width">Width, mm.</param>
    /// <param name="height">Height, mm.</param>
    /// <param name="radius">Corner radius, mm, up to half of the smaller of both.</param>
    public static Region Of(Point2 middle, double width, double height, double radius)
    {
        Region round = Region.RoundedRectangle(middle, width, height, radius, RingSide.Outside);
        Box2 box = round.Bounds;
        double slant = SlantOfRadius * radius;
        Region roof = Region.Polygon(
        [
            new Point2(box.Min.X, middle.Y), new Point2(box.Max.X, middle.Y), new Point2(box.Max.X, box.Max.Y - slant),
            new Point2(box.Max.X - slant, box.Max.Y), new Point2(box.Min.X + slant, box.Max.Y), new Point2(box.Min.X, box.Max.Y - slant),
        ]);
        return round.Intersect(Region.Rectangle(box.Min, new Point2(box.Max.X, middle.Y))).And(roof);
    }
}
