using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Gcode;

/// <summary>
/// Gathers the convex hull of any number of points in little memory. A bed may be larger than the lattice of the housings, so these are
/// plain numbers.
/// </summary>
internal sealed class LaidHull
{
    private const int MostWaiting = 8192;
    private readonly List<Point2> _points = [];

    /// <summary>Takes a point.</summary>
    public void Add(Point2 point)
    {
        _points.Add(point);
        if (_points.Count > MostWaiting)
        {
            ImmutableArray<Point2> hull = Corners();
            _points.Clear();
            _points.AddRange(hull);
        }
    }

    /// <summary>
    /// The corners, counter-clockwise. Source: A. M. Andrew, Another efficient algorithm for convex hulls in two dimensions, 1979.
    /// </summary>
    public ImmutableArray<Point2> Corners()
    {
        Point2[] sorted = [.. _points.Distinct().OrderBy(p => p.X).ThenBy(p => p.Y)];
        if (sorted.Length < 3)
        {
            return [.. sorted];
        }

        List<Point2> below = Chain(sorted);
        List<Point2> above = Chain(sorted.Reverse());
        return [.. below.SkipLast(1), .. above.SkipLast(1)];
    }

    /// <summary>Mean width of a convex outline over all directions, mm. Source: Cauchy's formula, outline over pi.</summary>
    public static double MeanWidth(ImmutableArray<Point2> corners) =>
        corners.Select((p, i) => Point2.Distance(p, corners[(i + 1) % corners.Length])).Sum() / Math.PI;

    private static List<Point2> Chain(IEnumerable<Point2> sorted)
    {
        var chain = new List<Point2>();
        foreach (Point2 point in sorted)
        {
            while (chain.Count > 1 && Point2.Cross(chain[^1] - chain[^2], point - chain[^1]) <= 0)
            {
                chain.RemoveAt(chain.Count - 1);
            }

            chain.Add(point);
        }

        return chain;
    }
}
