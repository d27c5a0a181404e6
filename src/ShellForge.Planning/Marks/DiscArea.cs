using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Planning.Marks;

/// <summary>How much of a region lies within a circle round the axis: closed form, edge by edge, without an overlay.</summary>
internal static class DiscArea
{
    private const double DegreesToRadians = Math.PI / 180;

    /// <summary>Area of a region within a radius of the axis, mm2.</summary>
    public static double Of(Region region, double radius) => radius <= 0 ? 0 : region.Loops.Sum(loop => OfLoop(loop, radius));

    // Each edge makes a triangle with the axis; what of it lies in the circle counts with the edge's sense.
    private static double OfLoop(ImmutableArray<Point2> loop, double radius)
    {
        double sum = 0;
        for (int i = 0; i < loop.Length; i++)
        {
            sum += OfEdge(loop[i], loop[(i + 1) % loop.Length], radius);
        }

        return sum;
    }

    private static double OfEdge(Point2 from, Point2 to, double radius)
    {
        Point2 along = to - from;
        double a = (along.X * along.X) + (along.Y * along.Y);
        double b = (from.X * along.X) + (from.Y * along.Y);
        double c = (from.X * from.X) + (from.Y * from.Y) - (radius * radius);
        double root = (b * b) - (a * c);
        double enter = root > 0 ? Math.Clamp((-b - Math.Sqrt(root)) / a, 0, 1) : 1;
        double leave = root > 0 ? Math.Clamp((-b + Math.Sqrt(root)) / a, 0, 1) : 1;
        Point2 first = from + (enter * along);
        Point2 last = from + (leave * along);
        return Sector(from, first, radius) + (Cross(first, last) / 2) + Sector(last, to, radius);
    }

    private static double Sector(Point2 from, Point2 to, double radius) =>
        radius * radius / 2 * Trigonometry.Atan2Degrees(Cross(from, to), (from.X * to.X) + (from.Y * to.Y)) * DegreesToRadians;

    private static double Cross(Point2 a, Point2 b) => (a.X * b.Y) - (a.Y * b.X);
}
