using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Checks.Fit;

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

        (double Thickness, Angle At) least = (double.PositiveInfinity, Angle.Zero);
        for (int i = 0; i < Directions; i++)
        {
            var direction = Angle.FromDegrees((i + 0.5) * 360.0 / Directions);
            double[] crossings = [.. section.Loops.SelectMany(loop => Crossings(loop, axis, Point2.Polar(1, direction))).Order()];
            bool open = crossings.Length < 2 || crossings[0] > 1.5 * holeRadius;
            double thickness = open ? 0 : crossings[1] - crossings[0];
            if (thickness < least.Thickness)
            {
                least = (thickness, direction);
            }
        }

        return least;
    }

    private static IEnumerable<double> Crossings(ImmutableArray<Point2> loop, Point2 from, Point2 ray)
    {
        for (int i = 0; i < loop.Length; i++)
        {
            Point2 a = loop[i] - from;
            Point2 b = loop[(i + 1) % loop.Length] - from;
            double sideA = Point2.Cross(ray, a);
            double sideB = Point2.Cross(ray, b);
            if ((sideA <= 0) != (sideB <= 0))
            {
                double share = sideA / (sideA - sideB);
                double along = Point2.Dot(ray, a + (share * (b - a)));
                if (along > 0)
                {
                    yield return along;
                }
            }
        }
    }
}
