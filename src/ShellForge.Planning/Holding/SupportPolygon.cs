using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Planning.Holding;

/// <summary>
/// What a thing stands on, as the smallest convex polygon round all places where it is carried: pushed down inside of it, it stays; pushed
/// down outside, it tips over the nearest side.
/// </summary>
/// <param name="Corners">Counter-clockwise; fewer than three where all places lie on one line.</param>
internal sealed record SupportPolygon(ImmutableArray<Point2> Corners)
{
    /// <summary>The polygon round some places.</summary>
    public static SupportPolygon Of(IEnumerable<Point2> places)
    {
        Point2[] sorted = [.. places.Distinct().OrderBy(p => p.X).ThenBy(p => p.Y)];
        return sorted.Length < 3 ? new([.. sorted]) : new([.. HalfHull(sorted), .. HalfHull([.. sorted.Reverse()])]);
    }

    /// <summary>
    /// How far a place lies inside, mm to the nearest side; negative where it lies outside. On a line it is 0 at the best.
    /// </summary>
    public double Inside(Point2 place)
    {
        if (Corners.Length < 3)
        {
            return Corners.IsEmpty ? double.NegativeInfinity : -ToSide(place, Corners[0], Corners[^1]);
        }

        double within = double.PositiveInfinity;
        double away = double.PositiveInfinity;
        for (int i = 0; i < Corners.Length; i++)
        {
            (Point2 from, Point2 to) = (Corners[i], Corners[(i + 1) % Corners.Length]);
            within = Math.Min(within, Point2.Cross(to - from, place - from) / Point2.Distance(from, to));
            away = Math.Min(away, ToSide(place, from, to));
        }

        return within >= 0 ? within : -away;
    }

    private static IEnumerable<Point2> HalfHull(Point2[] sorted)
    {
        var half = new List<Point2>();
        foreach (Point2 next in sorted)
        {
            while (half.Count > 1 && Point2.Cross(half[^1] - half[^2], next - half[^2]) <= 0)
            {
                half.RemoveAt(half.Count - 1);
            }

            half.Add(next);
        }

        // The other half begins with the last.
        return half.SkipLast(1);
    }

    private static double ToSide(Point2 place, Point2 from, Point2 to)
    {
        Point2 side = to - from;
        double length = Point2.Dot(side, side);
        double along = length > 0 ? Math.Clamp(Point2.Dot(place - from, side) / length, 0, 1) : 0;
        return Point2.Distance(place, from + (along * side));
    }
}
