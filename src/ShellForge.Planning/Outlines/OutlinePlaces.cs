using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Planning.Outlines;

/// <summary>A place on an outline.</summary>
/// <param name="At">The place.</param>
/// <param name="Outward">The direction square to the outline, away from the region.</param>
public readonly record struct OutlinePlace(Point2 At, Angle Outward);

/// <summary>Places along the outer outlines of regions.</summary>
public static class OutlinePlaces
{
    /// <summary>The place on an outline that is nearest to a point, the first among equals.</summary>
    /// <param name="loop">Corners of the outline, at least one.</param>
    /// <param name="to">The point.</param>
    public static Point2 Nearest(ImmutableArray<Point2> loop, Point2 to)
    {
        Point2 nearest = loop[0];
        for (int i = 0; i < loop.Length; i++)
        {
            Point2 side = loop[(i + 1) % loop.Length] - loop[i];
            double share = Math.Clamp(Point2.Dot(to - loop[i], side) / Point2.Dot(side, side), 0, 1);
            Point2 candidate = loop[i] + (share * side);
            if (Point2.Distance(candidate, to) < Point2.Distance(nearest, to))
            {
                nearest = candidate;
            }
        }

        return nearest;
    }

    /// <summary>The place on the outline of a region that is nearest to a point, with the direction square to its side there.</summary>
    /// <param name="loop">Corners of an outer outline, counter-clockwise.</param>
    /// <param name="to">The point.</param>
    public static OutlinePlace NearestSide(ImmutableArray<Point2> loop, Point2 to)
    {
        OutlinePlace nearest = default;
        double least = double.PositiveInfinity;
        for (int i = 0; i < loop.Length; i++)
        {
            Point2 side = loop[(i + 1) % loop.Length] - loop[i];
            Point2 at = Nearest([loop[i], loop[(i + 1) % loop.Length]], to);
            double distance = Point2.Distance(at, to);
            if (distance < least)
            {
                (nearest, least) = (new OutlinePlace(at, Angle.Of(new Point2(side.Y, 0 - side.X))), distance);
            }
        }

        return nearest;
    }

    /// <summary>Places an equal way apart along the outer outlines, the first half a way from the outline's first corner.</summary>
    /// <param name="region">The region.</param>
    /// <param name="apart">Way from one to the next at the most, mm.</param>
    public static ImmutableArray<OutlinePlace> Along(Region region, double apart)
    {
        var places = ImmutableArray.CreateBuilder<OutlinePlace>();
        foreach (ImmutableArray<Point2> loop in region.Parts.Select(part => part.Loops[0]))
        {
            double length = loop.Select((corner, i) => Point2.Distance(corner, loop[(i + 1) % loop.Length])).Sum();
            double step = length / Math.Ceiling(length / apart);
            double next = step / 2;
            double passed = 0;
            for (int i = 0; i < loop.Length; i++)
            {
                Point2 side = loop[(i + 1) % loop.Length] - loop[i];
                double end = passed + side.Length;
                for (; next < end; next += step)
                {
                    places.Add(new OutlinePlace(loop[i] + ((next - passed) / side.Length * side), Angle.Of(new Point2(side.Y, -side.X))));
                }

                passed = end;
            }
        }

        return places.ToImmutable();
    }
}
