using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Measuring;

/// <summary>Where a point lies.</summary>
public enum Membership
{
    /// <summary>Not in the solid.</summary>
    Outside,

    /// <summary>On its surface.</summary>
    OnSurface,

    /// <summary>In the solid.</summary>
    Inside,
}

/// <summary>Whether a point lies in a solid, decided exactly for any point and any mesh on the lattice.</summary>
public static class PointMembership
{
    /// <summary>Where a point lies.</summary>
    /// <param name="solid">A surface that bounds a solid; a moved one is taken as its corners were rounded to doubles.</param>
    /// <param name="point">The point, mm.</param>
    public static Membership Of(SurfaceTree solid, Point3 point)
    {
        ReadOnlySpan<BoxNode> nodes = solid.Nodes;
        if (nodes.IsEmpty)
        {
            return Membership.Outside;
        }

        Span<int> stack = solid.StackSize <= 128 ? stackalloc int[128] : new int[solid.StackSize];
        int depth = 0;
        int crossings = 0;
        stack[depth++] = 0;
        while (depth > 0)
        {
            int at = stack[--depth];
            ref readonly BoxNode node = ref nodes[at];
            if (!MeetsUpwardRay(node.Box, point))
            {
                continue;
            }

            if (node.Right != 0)
            {
                stack[depth++] = node.Right;
                stack[depth++] = at + 1;
                continue;
            }

            for (int i = node.First; i < node.End; i++)
            {
                ref readonly Triangle3 t = ref solid.Triangles[i];
                if (IsOn(t, point))
                {
                    return Membership.OnSurface;
                }

                crossings += UpwardRay<FloatingOrientation>.Crossing(point, t.A, t.B, t.C);
            }
        }

        return crossings > 0 ? Membership.Inside : Membership.Outside;
    }

    private static bool MeetsUpwardRay(in FloatBox box, in Point3 p) =>
        p.X >= box.MinX && p.X <= box.MaxX && p.Y >= box.MinY && p.Y <= box.MaxY && p.Z <= box.MaxZ;

    private static bool IsOn(in Triangle3 t, in Point3 p)
    {
        if (FloatingOrientation.Sign3(t.A, t.B, t.C, p) != 0)
        {
            return false;
        }

        // In the triangle's plane: seen along each axis along which the triangle has an area, the point must not be outside.
        return IsInShadow(t.A.X, t.A.Y, t.B.X, t.B.Y, t.C.X, t.C.Y, p.X, p.Y)
            && IsInShadow(t.A.Y, t.A.Z, t.B.Y, t.B.Z, t.C.Y, t.C.Z, p.Y, p.Z)
            && IsInShadow(t.A.Z, t.A.X, t.B.Z, t.B.X, t.C.Z, t.C.X, p.Z, p.X);
    }

    private static bool IsInShadow(double ax, double ay, double bx, double by, double cx, double cy, double px, double py)
    {
        if (FloatingOrientation.Sign2(ax, ay, bx, by, cx, cy) == 0)
        {
            return true;
        }

        int ab = FloatingOrientation.Sign2(ax, ay, bx, by, px, py);
        int bc = FloatingOrientation.Sign2(bx, by, cx, cy, px, py);
        int ca = FloatingOrientation.Sign2(cx, cy, ax, ay, px, py);
        return (ab >= 0 && bc >= 0 && ca >= 0) || (ab <= 0 && bc <= 0 && ca <= 0);
    }
}
