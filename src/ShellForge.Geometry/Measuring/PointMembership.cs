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
        return IsInShadow(new(t.A.X, t.A.Y), new(t.B.X, t.B.Y), new(t.C.X, t.C.Y), new(p.X, p.Y))
            && IsInShadow(new(t.A.Y, t.A.Z), new(t.B.Y, t.B.Z), new(t.C.Y, t.C.Z), new(p.Y, p.Z))
            && IsInShadow(new(t.A.Z, t.A.X), new(t.B.Z, t.B.X), new(t.C.Z, t.C.X), new(p.Z, p.X));
    }

    private static bool IsInShadow(in Point2 a, in Point2 b, in Point2 c, in Point2 p)
    {
        if (Sign(a, b, c) == 0)
        {
            return true;
        }

        int ab = Sign(a, b, p);
        int bc = Sign(b, c, p);
        int ca = Sign(c, a, p);
        return (ab >= 0 && bc >= 0 && ca >= 0) || (ab <= 0 && bc <= 0 && ca <= 0);
    }

    private static int Sign(in Point2 a, in Point2 b, in Point2 c) => FloatingOrientation.Sign2(a.X, a.Y, b.X, b.Y, c.X, c.Y);
}
