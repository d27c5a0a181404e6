using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Checks.Gauges;

/// <summary>Plastic round a hole, seen from its axis.</summary>
internal static class RadialWall
{
    private const int Directions = 72;

    /// <summary>
    /// The least thickness of plastic round a hole, over rays from its axis: from where a ray comes into the section to where it
    /// leaves it. Null where the axis itself lies in plastic; 0 where some ray meets no plastic near the hole.
    /// </summary>
    /// <param name="section">The section.</param>
    /// <param name="axis">The hole's axis.</param>
    /// <param name="holeRadius">The hole's radius as drawn, mm: plastic that begins much farther out is none of the hole's.</param>
    public static (double Thickness, Angle At)? Least(Region section, Point2 axis, double holeRadius)
    {
        if (section.Contains(axis))
        {
            return null;
        }

        (Point2 From, Point2 To)[] sides =
            [.. section.Loops.SelectMany(loop => loop.Select((corner, i) => (corner - axis, loop[(i + 1) % loop.Length] - axis)))];
        (double Thickness, Angle At) least = (double.PositiveInfinity, Angle.Zero);
        for (int i = 0; i < Directions; i++)
        {
            var direction = Angle.FromDegrees((i + 0.5) * 360.0 / Directions);
            (double enters, double leaves) = Nearest(sides, Point2.Polar(1, direction));
            double thickness = double.IsPositiveInfinity(leaves) || enters > 1.5 * holeRadius ? 0 : leaves - enters;
            if (thickness < least.Thickness)
            {
                least = (thickness, direction);
            }
        }

        return least;
    }

    // The two nearest crossings of a ray from the origin; infinite where there are fewer.
    private static (double First, double Second) Nearest((Point2 From, Point2 To)[] sides, Point2 ray)
    {
        (double first, double second) = (double.PositiveInfinity, double.PositiveInfinity);
        foreach ((Point2 a, Point2 b) in sides)
        {
            double sideA = Point2.Cross(ray, a);
            double sideB = Point2.Cross(ray, b);
            if ((sideA <= 0) == (sideB <= 0))
            {
                continue;
            }

            double along = Point2.Dot(ray, a + (sideA / (sideA - sideB) * (b - a)));
            if (along > 0 && along < first)
            {
                (first, second) = (along, first);
            }
            else if (along > 0 && along < second)
            {
                second = along;
            }
        }

        return (first, second);
    }
}
