using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Step;

/// <summary>
/// A cylinder or cone about an axis along z. In lattice steps.
/// </summary>
/// <param name="Axis">Where the axis stands.</param>
/// <param name="Level">z at which the radius is known.</param>
/// <param name="Radius">Radius there.</param>
/// <param name="Slope">How much the radius grows per step upward; 0 for a cylinder.</param>
/// <param name="FacesOut">Whether the part's outer side looks away from the axis.</param>
internal sealed record RoundSurface(Point2 Axis, double Level, double Radius, double Slope, bool FacesOut)
{
    /// <summary>Corners lie up to a step off their circle in each direction.</summary>
    public const double CornerSteps = 4;

    public bool IsCylinder => Slope == 0;

    // What a level distance from the surface is to be multiplied by to be one across it.
    private double Lean => 1 / Math.Sqrt(1 + (Slope * Slope));

    /// <summary>Whether two heights are one to within rounding: where a cone meets a cylinder, corners lie a step above or below.</summary>
    public static bool IsLevel(double z, double other) => Math.Abs(z - other) <= Tolerances.FlatnessSteps;

    public double RadiusAt(double z) => Radius + (Slope * (z - Level));

    /// <summary>The same surface, its radius told at another height.</summary>
    public RoundSurface From(double level) => this with { Level = level, Radius = RadiusAt(level) };

    /// <summary>How far a point lies outside the surface, away from the axis; negative towards it.</summary>
    public double Off(Point3 p) => (Point2.Distance(p.XY, Axis) - RadiusAt(p.Z)) * Lean;

    public bool Holds(Point3 p) => Math.Abs(Off(p)) <= CornerSteps;

    /// <summary>The direction in which <see cref="Off"/> grows, of length one.</summary>
    public Point3 Outward(Point3 p)
    {
        Point2 away = p.XY - Axis;
        double share = Lean / away.Length;
        return new Point3(share * away.X, share * away.Y, -Slope * Lean);
    }

    /// <summary>Whether two surfaces have the same circle at a height.</summary>
    public bool Meets(RoundSurface other, double z) =>
        Point2.Distance(Axis, other.Axis) <= CornerSteps && Math.Abs(RadiusAt(z) - other.RadiusAt(z)) <= CornerSteps;
}
