namespace ShellForge.Geometry.Numerics;

/// <summary>A point or a vector in space, in millimetres.</summary>
public readonly record struct Point3(double X, double Y, double Z)
{
    /// <summary>The origin, or the vector without a length.</summary>
    public static Point3 Zero => default;

    /// <summary>The projection along z.</summary>
    public Point2 XY => new(X, Y);

    /// <summary>Distance from the origin in mm.</summary>
    public double Length => Math.Sqrt(Dot(this, this));

    /// <summary>Componentwise sum.</summary>
    public static Point3 operator +(Point3 a, Point3 b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    /// <summary>Componentwise difference.</summary>
    public static Point3 operator -(Point3 a, Point3 b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    /// <summary>Scaled by a factor.</summary>
    public static Point3 operator *(double factor, Point3 a) => new(factor * a.X, factor * a.Y, factor * a.Z);

    /// <summary>Scalar product.</summary>
    public static double Dot(Point3 a, Point3 b) => (a.X * b.X) + (a.Y * b.Y) + (a.Z * b.Z);

    /// <summary>Vector product.</summary>
    public static Point3 Cross(Point3 a, Point3 b) =>
        new((a.Y * b.Z) - (a.Z * b.Y), (a.Z * b.X) - (a.X * b.Z), (a.X * b.Y) - (a.Y * b.X));

    /// <summary>Distance between two points in mm.</summary>
    public static double Distance(Point3 a, Point3 b) => (a - b).Length;
}
