namespace ShellForge.Geometry.Numerics;

/// <summary>An axis-parallel rectangle in mm, borders included. Empty when a minimum exceeds its maximum.</summary>
public readonly record struct Box2(Point2 Min, Point2 Max)
{
    /// <summary>The box that holds nothing; joining it changes nothing.</summary>
    public static Box2 Empty => new(
        new Point2(double.PositiveInfinity, double.PositiveInfinity),
        new Point2(double.NegativeInfinity, double.NegativeInfinity));

    /// <summary>Whether the box holds no point.</summary>
    public bool IsEmpty => Min.X > Max.X || Min.Y > Max.Y;

    /// <summary>Extent along x and y in mm.</summary>
    public Point2 Size => IsEmpty ? default : Max - Min;

    /// <summary>The middle.</summary>
    public Point2 Centre => 0.5 * (Min + Max);

    /// <summary>The smallest box round all points.</summary>
    public static Box2 Of(IEnumerable<Point2> points)
    {
        Box2 box = Empty;
        foreach (Point2 p in points)
        {
            box = box.Including(p);
        }

        return box;
    }

    /// <summary>This box grown to hold a point.</summary>
    public Box2 Including(Point2 p) => new(
        new Point2(Math.Min(Min.X, p.X), Math.Min(Min.Y, p.Y)),
        new Point2(Math.Max(Max.X, p.X), Math.Max(Max.Y, p.Y)));

    /// <summary>This box grown by as much to all sides, in mm.</summary>
    public Box2 Grown(double by) => new(Min - new Point2(by, by), Max + new Point2(by, by));

    /// <summary>Whether every point of another box lies in this one.</summary>
    public bool Contains(Box2 other) =>
        Min.X <= other.Min.X && Min.Y <= other.Min.Y && Max.X >= other.Max.X && Max.Y >= other.Max.Y;

    /// <summary>Whether the boxes share a point.</summary>
    public bool Touches(Box2 other) =>
        Min.X <= other.Max.X && other.Min.X <= Max.X && Min.Y <= other.Max.Y && other.Min.Y <= Max.Y;
}
