using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Measuring;

/// <summary>Which faces a ray takes notice of.</summary>
public enum RayFaces
{
    /// <summary>All but those along which it runs.</summary>
    Any,

    /// <summary>Faces through which it comes into the solid.</summary>
    Entering,

    /// <summary>Faces through which it leaves the solid.</summary>
    Leaving,
}

/// <summary>
/// What a ray meets first. The ray is sheared onto the z axis and its triangles are judged by the signs of their edges there, which
/// neighbours share to the last bit, so no ray slips through an edge. Source: S. Woop, C. Benthin, I. Wald, Watertight ray/triangle
/// intersection, 2013.
/// </summary>
public static class RayCast
{
    /// <summary>The first place that a ray meets, its start included; null when there is none within reach.</summary>
    /// <param name="surface">The surface.</param>
    /// <param name="start">Where the ray starts, mm.</param>
    /// <param name="direction">Where it goes; any length but 0.</param>
    /// <param name="faces">Which faces count.</param>
    /// <param name="reach">How far to look, mm.</param>
    /// <exception cref="ArgumentException">The direction has no length.</exception>
    public static SurfacePlace? First(
        SurfaceTree surface, Point3 start, Point3 direction, RayFaces faces = RayFaces.Any, double reach = double.PositiveInfinity)
    {
        double length = direction.Length;
        if (!(length > 0) || !double.IsFinite(length))
        {
            throw new ArgumentException("A ray needs a direction.", nameof(direction));
        }

        ReadOnlySpan<BoxNode> nodes = surface.Nodes;
        if (nodes.IsEmpty)
        {
            return null;
        }

        var ray = new ShearedRay(start, (1 / length) * direction);
        double best = reach;
        int slot = -1;
        Span<int> stack = surface.StackSize <= 128 ? stackalloc int[128] : new int[surface.StackSize];
        int depth = 0;
        stack[depth++] = 0;
        while (depth > 0)
        {
            int at = stack[--depth];
            ref readonly BoxNode node = ref nodes[at];
            double enters = ray.Enters(node.Box);
            if (enters > best || double.IsPositiveInfinity(enters))
            {
                continue;
            }

            if (node.Right == 0)
            {
                for (int i = node.First; i < node.End; i++)
                {
                    double distance = ray.Meets(surface.Triangles[i], faces);
                    if (distance < best || (slot < 0 && distance <= best && distance < double.PositiveInfinity))
                    {
                        (best, slot) = (distance, i);
                    }
                }

                continue;
            }

            bool leftFirst = ray.Enters(nodes[at + 1].Box) <= ray.Enters(nodes[node.Right].Box);
            stack[depth++] = leftFirst ? node.Right : at + 1;
            stack[depth++] = leftFirst ? at + 1 : node.Right;
        }

        return slot < 0 ? null : new SurfacePlace(start + ((best / length) * direction), best, surface.NumberOf(slot));
    }
}
