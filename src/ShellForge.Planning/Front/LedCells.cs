using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Front;

/// <summary>A region divided between LEDs: each has what lies nearer to it than to any other.</summary>
internal static class LedCells
{
    /// <summary>Walls of a thickness halfway between LEDs, all over a region.</summary>
    /// <param name="field">The LEDs.</param>
    /// <param name="region">What is divided.</param>
    /// <param name="wall">Thickness of the walls, mm.</param>
    public static Region Walls(LedFieldPlan field, Region region, double wall) =>
        region.Less(Region.Union(Enumerable.Range(0, field.Leds.Length).Select(led => Cell(field, led, region.Bounds, wall / 2))));

    // The convex room of one LED, drawn in by half a wall.
    private static Region Cell(LedFieldPlan field, int led, Box2 box, double half)
    {
        Point2 at = field.Leds[led].At;
        Box2 frame = box.Grown(1);
        List<Point2> cell = [frame.Min, new(frame.Max.X, frame.Min.Y), frame.Max, new(frame.Min.X, frame.Max.Y)];
        foreach (FieldLed other in field.Leds.Where((_, i) => i != led).OrderBy(place => Point2.Distance(place.At, at)))
        {
            double apart = Point2.Distance(other.At, at);
            if (cell.Count == 0 || apart / 2 > cell.Max(corner => Point2.Distance(corner, at)) + half)
            {
                break;
            }

            Point2 towards = (1 / apart) * (other.At - at);
            cell = Within(cell, towards, Point2.Dot(towards, at) + (apart / 2) - half);
        }

        return Region.HullOf(cell);
    }

    // What of a convex outline lies within a distance along a direction.
    private static List<Point2> Within(List<Point2> outline, Point2 along, double most)
    {
        var kept = new List<Point2>();
        for (int i = 0; i < outline.Count; i++)
        {
            (Point2 a, Point2 b) = (outline[i], outline[(i + 1) % outline.Count]);
            (double from, double to) = (Point2.Dot(a, along) - most, Point2.Dot(b, along) - most);
            if (from <= 0)
            {
                kept.Add(a);
            }

            if ((from < 0 && to > 0) || (from > 0 && to < 0))
            {
                kept.Add(a + (from / (from - to) * (b - a)));
            }
        }

        return kept;
    }
}
