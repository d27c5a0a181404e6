namespace ShellForge.Geometry.Numerics;

/// <summary>An axis-parallel box in mm, borders included. Empty when a minimum exceeds its maximum.</summary>
public readonly record struct Box3(Point3 Min, Point3 Max)
{
    /// <summary>The box that holds nothing; joining it changes nothing.</summary>
    public static Box3 Empty => new(
        new Point3(double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity),
        new Point3(double.NegativeInfinity, double.NegativeInfinity, double.NegativeInfinity));

    /// <summary>Whether the box holds no point.</summary>
    public bool IsEmpty => Min.X > Max.X || Min.Y > Max.Y || Min.Z > Max.Z;

    /// <summary>Extent along x, y and z in mm.</summary>
    public Point3 Size => IsEmpty ? default : Max - Min;

    /// <summary>The middle.</summary>
    public Point3 Centre => 0.5 * (Min + Max);

    /// <summary>This box grown to hold a point.</summary>
    public Box3 Including(Point3 p) => new(
        new Point3(Math.Min(Min.X, p.X), Math.Min(Min.Y, p.Y), Math.Min(Min.Z, p.Z)),
        new Point3(Math.Max(Max.X, p.X), Math.Max(Max.Y, p.Y), Math.Max(Max.Z, p.Z)));

    /// <summary>Whether the boxes share a point.</summary>
    public bool Touches(Box3 other) =>
        Min.X <= other.Max.X && other.Min.X <= Max.X && Min.Y <= other.Max.Y && other.Min.Y <= Max.Y
        && Min.Z <= other.Max.Z && other.Min.Z <= Max.Z;
}
