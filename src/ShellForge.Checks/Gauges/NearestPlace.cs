using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Checks.Gauges;

/// <summary>Where two outlines come nearest to each other.</summary>
internal static class NearestPlace
{
    /// <summary>The point of an outline that lies nearest to another outline apart from it.</summary>
    public static Point2 On(Region outline, Region other) => Between(outline, other).On;

    /// <summary>
    /// The points, one on each of two outlines apart from each other, that lie nearest to each other. One of them is a corner, the other
    /// may lie on a side: a long straight edge has its nearest place far from its own corners.
    /// </summary>
    public static (Point2 On, Point2 Other) Between(Region outline, Region other)
    {
        (Point2 From, Point2 To)[] sides = [.. Sides(outline)];
        (double Square, Point2 On, Point2 Other) best = (double.PositiveInfinity, default, default);
        foreach ((Point2 from, Point2 to) in Sides(other))
        {
            foreach ((Point2 a, Point2 b) in sides)
            {
                Take(OnSide(from, a, b), from);
                Take(a, OnSide(a, from, to));
            }
        }

        return (best.On, best.Other);

        void Take(Point2 on, Point2 at)
        {
            Point2 gap = at - on;
            double square = Point2.Dot(gap, gap);
            if (square < best.Square)
            {
                best = (square, on, at);
            }
        }
    }

    private static IEnumerable<(Point2 From, Point2 To)> Sides(Region region) =>
        region.Loops.SelectMany(loop => loop.Select((corner, i) => (corner, loop[(i + 1) % loop.Length])));

    private static Point2 OnSide(Point2 point, Point2 from, Point2 to)
    {
        Point2 side = to - from;
        double length = Point2.Dot(side, side);
        return length > 0 ? from + (Math.Clamp(Point2.Dot(point - from, side) / length, 0, 1) * side) : from;
    }
}
