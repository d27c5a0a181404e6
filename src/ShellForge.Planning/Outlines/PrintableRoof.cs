using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Planning.Outlines;

/// <summary>
/// The roof that lets any opening without dents print in an upright wall: where its upper edge is flatter than the printer's overhang, the
/// two slants that touch it stand in its place, up to a level piece that is bridged.
/// </summary>
internal static class PrintableRoof
{
    // Corners nearer to each other than this are one: what a slant cuts off is no shorter, mm.
    private const double OneCorner = 0.01;

    /// <summary>The outline with its roof: nothing of the opening is lost.</summary>
    /// <param name="outline">A convex outline; y is up.</param>
    /// <param name="slant">The slants.</param>
    public static Region Over(Region outline, RoofSlant slant)
    {
        IReadOnlyList<Point2> corners = outline.Loops[0];
        Box2 box = outline.Bounds;
        Point2[] left = [box.Min, new(box.Max.X, box.Min.Y), box.Max, new(box.Min.X, box.Max.Y)];
        for (int i = 0; i < corners.Count; i++)
        {
            Point2 side = corners[(i + 1) % corners.Count] - corners[i];
            if (side.X >= 0 || Prints(side, slant.Lean))
            {
                left = Within(left, (1 / side.Length) * new Point2(side.Y, 0 - side.X), corners);
            }
        }

        left = Within(left, new Point2(slant.Lean.Cos, slant.Lean.Sin), corners);
        left = Within(left, new Point2(0 - slant.Lean.Cos, slant.Lean.Sin), corners);
        Point2[] apart = [.. left.Where((corner, i) => Point2.Distance(corner, left[(i + left.Length - 1) % left.Length]) > OneCorner)];
        return Region.Polygon([.. apart.Select(corner => Lattice.Snap(corner))]);
    }

    // A side that leads to the left hangs over what is below it; it prints where it leans no farther than the slants.
    private static bool Prints(Point2 side, Angle lean) => (0 - side.X) * lean.Cos <= Math.Abs(side.Y) * lean.Sin;

    // What of a convex outline lies on the inner side of the line that touches some corners from outside.
    private static Point2[] Within(Point2[] outline, Point2 outward, IReadOnlyList<Point2> touched)
    {
        double most = touched.Max(corner => Point2.Dot(corner, outward));
        var kept = new List<Point2>();
        for (int i = 0; i < outline.Length; i++)
        {
            Point2 from = outline[i];
            Point2 to = outline[(i + 1) % outline.Length];
            double before = Point2.Dot(from, outward) - most;
            double after = Point2.Dot(to, outward) - most;
            if (before <= 0)
            {
                kept.Add(from);
            }

            if (before * after < 0)
            {
                kept.Add(from + (before / (before - after) * (to - from)));
            }
        }

        return [.. kept];
    }
}
