using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Measuring;

/// <summary>A triangle in space, counter-clockwise seen from outside, mm.</summary>
internal readonly record struct Triangle3(Point3 A, Point3 B, Point3 C)
{
    /// <summary>Vector product of two sides: outward, as long as twice the area.</summary>
    public Point3 DoubleNormal => Point3.Cross(B - A, C - A);

    /// <summary>The middle of the three corners.</summary>
    public Point3 Middle => (1.0 / 3) * (A + B + C);

    /// <summary>The smallest box of floats round it; exact for corners on the lattice, else a last place wider.</summary>
    public FloatBox Box() => new()
    {
        MinX = Below(Math.Min(A.X, Math.Min(B.X, C.X))),
        MinY = Below(Math.Min(A.Y, Math.Min(B.Y, C.Y))),
        MinZ = Below(Math.Min(A.Z, Math.Min(B.Z, C.Z))),
        MaxX = Above(Math.Max(A.X, Math.Max(B.X, C.X))),
        MaxY = Above(Math.Max(A.Y, Math.Max(B.Y, C.Y))),
        MaxZ = Above(Math.Max(A.Z, Math.Max(B.Z, C.Z))),
    };

    /// <summary>
    /// The place of the triangle nearest to a point: by the part of its plane that the point's foot falls into. Source: C. Ericson,
    /// Real-Time Collision Detection, 2005, section 5.1.5.
    /// </summary>
    public Point3 Nearest(in Point3 p)
    {
        Point3 ab = B - A;
        Point3 ac = C - A;
        Point3 ap = p - A;
        double d1 = Point3.Dot(ab, ap);
        double d2 = Point3.Dot(ac, ap);
        if (d1 <= 0 && d2 <= 0)
        {
            return A;
        }

        Point3 bp = p - B;
        double d3 = Point3.Dot(ab, bp);
        double d4 = Point3.Dot(ac, bp);
        if (d3 >= 0 && d4 <= d3)
        {
            return B;
        }

        double vc = (d1 * d4) - (d3 * d2);
        if (vc <= 0 && d1 >= 0 && d3 <= 0)
        {
            return A + ((d1 / (d1 - d3)) * ab);
        }

        Point3 cp = p - C;
        double d5 = Point3.Dot(ab, cp);
        double d6 = Point3.Dot(ac, cp);
        if (d6 >= 0 && d5 <= d6)
        {
            return C;
        }

        double vb = (d5 * d2) - (d1 * d6);
        if (vb <= 0 && d2 >= 0 && d6 <= 0)
        {
            return A + ((d2 / (d2 - d6)) * ac);
        }

        double va = (d3 * d6) - (d5 * d4);
        if (va <= 0 && d4 - d3 >= 0 && d5 - d6 >= 0)
        {
            return B + (((d4 - d3) / ((d4 - d3) + (d5 - d6))) * (C - B));
        }

        double whole = va + vb + vc;
        return A + ((vb / whole) * ab) + ((vc / whole) * ac);
    }

    private static float Below(double value)
    {
        float near = (float)value;
        return near > value ? MathF.BitDecrement(near) : near;
    }

    private static float Above(double value)
    {
        float near = (float)value;
        return near < value ? MathF.BitIncrement(near) : near;
    }
}
