using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Gauges;

/// <summary>Straight lines through an opening, spread evenly over it: what a finger, a beam or a sensor looks along.</summary>
internal static class SightLines
{
    // Lines along the larger and the smaller size; what passes within so much of the edge may touch it, mm.
    private const int Each = 12;
    private const double OffEdge = 0.1;

    /// <summary>The lines of an opening, from its outer end to its inner end.</summary>
    public static ImmutableArray<(Point3 Outside, Point3 Inside)> Through(OwnOpeningPlan opening)
    {
        Region inside = opening.Outline.Offset(-OffEdge);
        Box2 box = inside.Bounds;
        var lines = ImmutableArray.CreateBuilder<(Point3, Point3)>();
        for (int row = 0; row < Each; row++)
        {
            for (int column = 0; column < Each; column++)
            {
                var at = new Point2(
                    box.Min.X + ((column + 0.5) / Each * box.Size.X), box.Min.Y + ((row + 0.5) / Each * box.Size.Y));
                if (inside.Contains(at))
                {
                    lines.Add(opening.SightThrough(at));
                }
            }
        }

        return lines.ToImmutable();
    }
}
