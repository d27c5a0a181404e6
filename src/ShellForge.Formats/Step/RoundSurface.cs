using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Step;

/// <summary>A surface that a face lies on, in lattice steps.</summary>
internal interface ISurface
{
    /// <summary>How far a point lies off the surface, along its normal.</summary>
    double Distance(Point3 p);

    /// <summary>The unit normal near a point; of round surfaces away from the axis.</summary>
    Point3 Normal(Point3 p);
}

/// <summary>A plane.</summary>
/// <param name="Origin">A point in it.</param>
/// <param name="Outward">Its unit normal.</param>
internal sealed record FlatSurface(Point3 Origin, Point3 Outward) : ISurface
{
    public double Distance(Point3 p) => Point3.Dot(p - Origin, Outward);

    public Point3 Normal(Point3 p) => Outward;
}

/// <summary>A cylinder or a cone.</summary>
/// <param name="Origin">A point on the axis.</param>
/// <param name="Axis">Unit direction of the axis.</param>
/// <param name="Radius">Radius at the origin.</param>
/// <param name="Slope">How much the radius grows along the axis; 0 for a cylinder.</param>
internal sealed record RoundSurface(Point3 Origin, Point3 Axis, double Radius, double Slope) : ISurface
{
    private double Steepness => Math.Sqrt(1 + (Slope * Slope));

    /// <summary>How far along the axis a point lies, from the origin.</summary>
    public double Height(Point3 p) => Point3.Dot(p - Origin, Axis);

    /// <summary>From the axis to a point, at right angles to it.</summary>
    public Point3 Spoke(Point3 p) => p - Origin - (Height(p) * Axis);

    /// <summary>The radius at a height.</summary>
    public double RadiusAt(double height) => Radius + (Slope * height);

    /// <summary>The point of the axis at a height.</summary>
    public Point3 OnAxis(double height) => Origin + (height * Axis);

    public double Distance(Point3 p) => (Spoke(p).Length - RadiusAt(Height(p))) / Steepness;

    public Point3 Normal(Point3 p)
    {
        Point3 spoke = Spoke(p);
        return 1 / Steepness * ((1 / spoke.Length * spoke) - (Slope * Axis));
    }

    /// <summary>Where a point lies round the axis.</summary>
    public Angle Around(Point3 p)
    {
        (Point3 right, Point3 up) = Frame(Axis);
        Point3 spoke = Spoke(p);
        return Angle.Of(new Point2(Point3.Dot(spoke, right), Point3.Dot(spoke, up)));
    }

    /// <summary>Whether another surface turns about the same line.</summary>
    public bool IsCoaxial(RoundSurface other) =>
        Point3.Cross(Axis, other.Axis).Length <= SameDirection && Spoke(other.Origin).Length <= Tolerances.FlatnessSteps;

    /// <summary>Sines of angles below this are none: a metre further two such lines are a tenth of a millimetre apart.</summary>
    public const double SameDirection = 1e-4;

    /// <summary>Two directions at right angles to one, and to each other: right-handed with it.</summary>
    public static (Point3 Right, Point3 Up) Frame(Point3 axis)
    {
        Point3 helper = Math.Abs(axis.X) <= Math.Abs(axis.Z) ? new Point3(1, 0, 0) : new Point3(0, 0, 1);
        Point3 right = helper - (Point3.Dot(helper, axis) * axis);
        right = 1 / right.Length * right;
        return (right, Point3.Cross(axis, right));
    }
}
