using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Checks.Gauges;

/// <summary>
/// A quick look whether a layer is carried by the one below: where their outlines are the same, there is nothing to see, and from one
/// layer to the next most sides are. Of what is uncovered some border lies on a side that only one of the two has: on the layer's own
/// outline, or, where the layer closes a hole, on the outline below. Those sides are walked in steps.
/// </summary>
internal static class Carried
{
    /// <summary>Whether nothing of a layer stands out by more than a reach over the one below, up to pieces shorter than that.</summary>
    /// <param name="layer">Section of the layer.</param>
    /// <param name="below">Section of the layer below.</param>
    /// <param name="reach">How far it may stand out, mm.</param>
    public static bool IsAll(Region layer, Region below, double reach)
    {
        if (below.IsEmpty)
        {
            return layer.IsEmpty;
        }

        HashSet<(Point2, Point2)> sides = SidesOf(layer);
        HashSet<(Point2, Point2)> sidesBelow = SidesOf(below);
        return !sides.Except(sidesBelow).SelectMany(side => Along(side, reach))
            .Any(point => !below.IsNearOutline(point, reach) && !below.Contains(point))
            && !sidesBelow.Except(sides).SelectMany(side => Along(side, reach))
                .Any(point => !layer.IsNearOutline(point, reach) && layer.Contains(point));
    }

    private static HashSet<(Point2 From, Point2 To)> SidesOf(Region region)
    {
        var sides = new HashSet<(Point2, Point2)>();
        foreach (ImmutableArray<Point2> loop in region.Loops)
        {
            for (int i = 0; i < loop.Length; i++)
            {
                sides.Add((loop[i], loop[(i + 1) % loop.Length]));
            }
        }

        return sides;
    }

    private static IEnumerable<Point2> Along((Point2 From, Point2 To) side, double step)
    {
        int steps = Math.Max(1, (int)Math.Ceiling(Point2.Distance(side.From, side.To) / step));
        for (int i = 0; i <= steps; i++)
        {
            yield return side.From + (((double)i / steps) * (side.To - side.From));
        }
    }
}
