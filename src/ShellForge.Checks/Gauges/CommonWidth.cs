using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Checks.Gauges;

/// <summary>How deep two bodies stand in each other in plan.</summary>
internal static class CommonWidth
{
    /// <summary>
    /// The least width of the area that two bodies share, mm, whichever way it lies: a box along x and y round a narrow strip at a slant is
    /// as wide as the strip is long.
    /// </summary>
    public static double Of(Region common) => common.Parts.Select(part => Least(part.Hull())).DefaultIfEmpty(0).Max();

    // The narrowest pair of parallel lines round a convex outline lies along one of its sides.
    private static double Least(Region hull)
    {
        double least = double.PositiveInfinity;
        foreach (ImmutableArray<Point2> loop in hull.Loops)
        {
            for (int i = 0; i < loop.Length; i++)
            {
                Point2 side = loop[(i + 1) % loop.Length] - loop[i];
                if (side.Length > 0)
                {
                    least = Math.Min(least, loop.Max(point => Math.Abs(Point2.Cross(side, point - loop[i]))) / side.Length);
                }
            }
        }

        return double.IsPositiveInfinity(least) ? 0 : least;
    }
}
