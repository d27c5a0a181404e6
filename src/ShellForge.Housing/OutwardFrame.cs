using ShellForge.Geometry.Numerics;

namespace ShellForge.Housing;

/// <summary>
/// The frame of things that run through a wall: a body drawn in the plane (v, z) and extruded along u is turned so that u points in a
/// direction, v to its left and z up.
/// </summary>
internal static class OutwardFrame
{
    /// <summary>From (v, z, u) to the housing's frame.</summary>
    public static Transform3 Facing(Angle direction) => new(
        0 - direction.Sin, 0, direction.Cos, 0,
        direction.Cos, 0, direction.Sin, 0,
        0, 1, 0, 0);

    /// <summary>v of a point: its distance to the left of the ray from the axis.</summary>
    public static double Across(Point2 point, Angle direction) => (point.Y * direction.Cos) - (point.X * direction.Sin);

    /// <summary>u of a point: its distance from the axis along the direction.</summary>
    public static double Along(Point2 point, Angle direction) => (point.X * direction.Cos) + (point.Y * direction.Sin);
}
