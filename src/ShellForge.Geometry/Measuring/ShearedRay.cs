using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Measuring;

/// <summary>A ray made ready for many boxes and triangles.</summary>
internal readonly struct ShearedRay
{
    // A slab's bounds err by a few last places; a box is taken to be larger by so much of the distance, never smaller.
    private const double Widening = 1 + (8.0 / (1L << 52));

    private readonly Point3 _start;
    private readonly Point3 _inverse;
    private readonly int _axis;
    private readonly double _shearX;
    private readonly double _shearY;
    private readonly double _shearZ;

    /// <summary>A ray.</summary>
    /// <param name="start">Start.</param>
    /// <param name="direction">Direction of length 1.</param>
    public ShearedRay(in Point3 start, in Point3 direction)
    {
        _start = start;
        _inverse = new Point3(1 / direction.X, 1 / direction.Y, 1 / direction.Z);
        double x = Math.Abs(direction.X);
        double y = Math.Abs(direction.Y);
        double z = Math.Abs(direction.Z);
        _axis = x >= y && x >= z ? 0 : y >= z ? 1 : 2;
        Point3 turned = Turned(direction);
        _shearX = turned.X / turned.Z;
        _shearY = turned.Y / turned.Z;
        _shearZ = 1 / turned.Z;
    }

    /// <summary>The distance at which the ray comes into a box; infinite when it misses it.</summary>
    public double Enters(in FloatBox box)
    {
        double from = 0;
        double to = double.PositiveInfinity;
        Slab(box.MinX, box.MaxX, _start.X, _inverse.X, ref from, ref to);
        Slab(box.MinY, box.MaxY, _start.Y, _inverse.Y, ref from, ref to);
        Slab(box.MinZ, box.MaxZ, _start.Z, _inverse.Z, ref from, ref to);
        return from <= to * Widening ? from : double.PositiveInfinity;
    }

    /// <summary>The distance at which the ray meets a triangle, its edges included; infinite when it misses it.</summary>
    public double Meets(in Triangle3 triangle, RayFaces faces)
    {
        Point3 a = Sheared(triangle.A);
        Point3 b = Sheared(triangle.B);
        Point3 c = Sheared(triangle.C);
        double u = (c.X * b.Y) - (c.Y * b.X);
        double v = (a.X * c.Y) - (a.Y * c.X);
        double w = (b.X * a.Y) - (b.Y * a.X);
        if ((u < 0 || v < 0 || w < 0) && (u > 0 || v > 0 || w > 0))
        {
            return double.PositiveInfinity;
        }

        // Looking along the ray, a face whose corners run clockwise looks the ray's way: the ray leaves through it.
        double whole = u + v + w;
        bool leaving = _shearZ > 0 ? whole < 0 : whole > 0;
        if (whole == 0 || (faces == RayFaces.Entering && leaving) || (faces == RayFaces.Leaving && !leaving))
        {
            return double.PositiveInfinity;
        }

        double distance = ((u * a.Z) + (v * b.Z) + (w * c.Z)) / whole;
        return distance >= 0 ? distance : double.PositiveInfinity;
    }

    private static void Slab(double min, double max, double start, double inverse, ref double from, ref double to)
    {
        if (double.IsInfinity(inverse))
        {
            if (start < min || start > max)
            {
                to = double.NegativeInfinity;
            }

            return;
        }

        double near = (min - start) * inverse;
        double far = (max - start) * inverse;
        from = double.MaxNative(from, double.MinNative(near, far));
        to = double.MinNative(to, double.MaxNative(near, far));
    }

    private Point3 Sheared(in Point3 p)
    {
        Point3 q = Turned(p - _start);
        return new Point3(q.X - (_shearX * q.Z), q.Y - (_shearY * q.Z), _shearZ * q.Z);
    }

    // The longest part of the direction becomes z; a cyclic change keeps the handedness.
    private Point3 Turned(in Point3 p) => _axis switch
    {
        0 => new Point3(p.Y, p.Z, p.X),
        1 => new Point3(p.Z, p.X, p.Y),
        _ => p,
    };
}
