using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Measuring;

/// <summary>A place on a surface.</summary>
/// <param name="At">The place, mm.</param>
/// <param name="Distance">Its distance from what was asked for, mm.</param>
/// <param name="Triangle">The triangle it lies on, by its number in the mesh.</param>
public readonly record struct SurfacePlace(Point3 At, double Distance, int Triangle);

/// <summary>The place of a surface that is nearest to a point.</summary>
public static class ClosestPoint
{
    /// <summary>The nearest place, looking no farther than a reach; null when there is none. Of equal ones, any.</summary>
    /// <param name="surface">The surface.</param>
    /// <param name="point">The point, mm.</param>
    /// <param name="reach">How far to look, mm.</param>
    public static SurfacePlace? On(SurfaceTree surface, Point3 point, double reach = double.PositiveInfinity)
    {
        ReadOnlySpan<BoxNode> nodes = surface.Nodes;
        if (nodes.IsEmpty)
        {
            return null;
        }

        double best = reach * reach;
        int slot = -1;
        Point3 near = default;
        Span<int> stack = surface.StackSize <= 128 ? stackalloc int[128] : new int[surface.StackSize];
        int depth = 0;
        stack[depth++] = 0;
        while (depth > 0)
        {
            int at = stack[--depth];
            ref readonly BoxNode node = ref nodes[at];
            if (SquareDistance(node.Box, point) > best)
            {
                continue;
            }

            if (node.Right == 0)
            {
                for (int i = node.First; i < node.End; i++)
                {
                    Point3 candidate = surface.Triangles[i].Nearest(point);
                    Point3 way = candidate - point;
                    double square = Point3.Dot(way, way);
                    if (square < best || (slot < 0 && square <= best))
                    {
                        (best, slot, near) = (square, i, candidate);
                    }
                }

                continue;
            }

            bool leftFirst = SquareDistance(nodes[at + 1].Box, point) <= SquareDistance(nodes[node.Right].Box, point);
            stack[depth++] = leftFirst ? node.Right : at + 1;
            stack[depth++] = leftFirst ? at + 1 : node.Right;
        }

        return slot < 0 ? null : new SurfacePlace(near, Math.Sqrt(best), surface.NumberOf(slot));
    }

    /// <summary>
    /// How deep a point lies in a solid: its distance from the surface, negative outside. The empty solid is infinitely far away.
    /// </summary>
    /// <param name="solid">A surface that bounds a solid.</param>
    /// <param name="point">The point, mm.</param>
    public static double Depth(SurfaceTree solid, Point3 point)
    {
        if (On(solid, point) is not { } place)
        {
            return double.NegativeInfinity;
        }

        return PointMembership.Of(solid, point) == Membership.Outside ? -place.Distance : place.Distance;
    }

    private static double SquareDistance(in FloatBox box, in Point3 p)
    {
        double x = Math.Max(0, Math.Max(box.MinX - p.X, p.X - box.MaxX));
        double y = Math.Max(0, Math.Max(box.MinY - p.Y, p.Y - box.MaxY));
        double z = Math.Max(0, Math.Max(box.MinZ - p.Z, p.Z - box.MaxZ));
        return (x * x) + (y * y) + (z * z);
    }
}
