using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Step;

/// <summary>
/// A part of a cylinder or cone about an axis along z, at most a half turn. In lattice steps.
/// </summary>
/// <param name="Axis">Where the axis stands.</param>
/// <param name="Low">z of its lower circle.</param>
/// <param name="LowRadius">Radius there.</param>
/// <param name="High">z of its upper circle.</param>
/// <param name="HighRadius">Radius there.</param>
/// <param name="FacesOut">Whether its outer side looks away from the axis.</param>
internal sealed record RoundPatch(Point2 Axis, double Low, double LowRadius, double High, double HighRadius, bool FacesOut)
{
    /// <summary>Whether both circles are one to within rounding.</summary>
    public bool IsCylinder => Math.Abs(LowRadius - HighRadius) <= Tolerances.FlatnessSteps;

    /// <summary>Whether two heights are one to within rounding: where a cone meets a cylinder, corners lie a step above or below.</summary>
    public static bool IsLevel(double z, double other) => Math.Abs(z - other) <= Tolerances.FlatnessSteps;
}
