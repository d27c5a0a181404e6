using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Checks.Gauges;

/// <summary>How near a part of the board comes to a part of the housing.</summary>
/// <param name="Distance">Least distance, mm; negative: how deep they are in each other in plan.</param>
/// <param name="At">The place.</param>
/// <param name="Upright">Whether the gap runs along z: to a floor or a roof, not to a wall.</param>
internal readonly record struct BodyGap(double Distance, Point3 At, bool Upright)
{
    /// <summary>The least gap between a body and the slabs of a part, looking no farther than a reach; null: farther.</summary>
    public static BodyGap? Least(BoardBody body, ImmutableArray<SectionSlab> slabs, double reach)
    {
        BodyGap? least = null;
        Box2 around = body.Outline.Bounds.Grown(reach);
        foreach (SectionSlab slab in slabs)
        {
            double above = slab.FromZ - body.ToZ;
            double below = body.FromZ - slab.ToZ;
            double along = Math.Max(0, Math.Max(above, below));
            if (along > reach || !slab.Outline.Bounds.Touches(around))
            {
                continue;
            }

            double across = body.Outline.Distance(slab.Outline);
            double distance = Math.Sqrt((along * along) + (across * across));
            double z = Math.Clamp((slab.FromZ + slab.ToZ) / 2, body.FromZ, body.ToZ);
            if (distance == 0)
            {
                Region common = body.Outline.Intersect(slab.Outline);
                if (common.IsEmpty)
                {
                    continue;
                }

                double depth = Math.Min(CommonWidth.Of(common), Math.Min(body.ToZ, slab.ToZ) - Math.Max(body.FromZ, slab.FromZ));
                if (least is null || -depth < least.Value.Distance)
                {
                    Point2 centre = common.Bounds.Centre;
                    least = new BodyGap(-depth, new Point3(centre.X, centre.Y, z), false);
                }
            }
            else if (distance <= reach && (least is null || distance < least.Value.Distance))
            {
                Point2 near = across == 0 ? Middle(body.Outline, slab.Outline) : NearestPlace.On(body.Outline, slab.Outline);
                least = new BodyGap(distance, new Point3(near.X, near.Y, z), across < along);
            }
        }

        return least;
    }

    // Over or under each other: the middle of what they share in plan.
    private static Point2 Middle(Region body, Region section)
    {
        Region common = body.Intersect(section);
        return (common.IsEmpty ? body : common).Bounds.Centre;
    }
}
