namespace ShellForge.Geometry.Numerics;

/// <summary>A point or a vector in the plane, in millimetres.</summary>
public readonly record struct Point2(double X, double Y)
{
    /// <summary>The origin.</summary>
    public static Point2 Origin => default;

    /// <summary>Distance from the origin in mm.</summary>
    public double Length => Math.Sqrt((X * X) + (Y * Y));

    /// <summary>Componentwise sum.</summary>
    public static Point2 operator +(Point2 a, Point2 b) => new(a.X + b.X, a.Y + b.Y);

    /// <summary>Componentwise difference.</summary>
    public static Point2 operator -(Point2 a, Point2 b) => new(a.X - b.X, a.Y - b.Y);

    /// <summary>Scaled by a factor.</summary>
    public static Point2 operator *(double factor, Point2 a) => new(factor * a.X, factor * a.Y);

    /// <summary>The point at a radius and an angle counter-clockwise from +x.</summary>
    public static Point2 Polar(double radius, Angle angle) => new(radius * angle.Cos, radius * angle.Sin);

    /// <summary>Scalar product.</summary>
    public static double Dot(Point2 a, Point2 b) => (a.X * b.X) + (a.Y * b.Y);

    /// <summary>z of the vector product: twice the area of the triangle (0, a, b), positive when b lies counter-clockwise of a.</summary>
    public static double Cross(Point2 a, Point2 b) => (a.X * b.Y) - (a.Y * b.X);

    /// <summary>Distance between two points in mm.</summary>
    public static double Distance(Point2 a, Point2 b) => (a - b).Length;

    /// <summary>Turned about the origin, counter-clockwise.</summary>
    public Point2 Turned(Angle by) => new((X * by.Cos) - (Y * by.Sin), (X * by.Sin) + (Y * by.Cos));
}
