using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Planning.Outlines;

/// <summary>
/// Strips in plan that run outward from the axis or along a line of sight: keys, notches and slots are cut from walls with them.
/// </summary>
public static class Strips
{
    /// <summary>A strip from the axis outward.</summary>
    /// <param name="direction">Where it runs.</param>
    /// <param name="width">Its width, mm.</param>
    /// <param name="from">Where it starts, mm from the axis.</param>
    /// <param name="to">Where it ends, mm from the axis.</param>
    public static Region Radial(Angle direction, double width, double from, double to) =>
        Along(Point2.Origin, direction, width, from, to);

    /// <summary>
    /// A distance from the axis that lies just outside an outline in every direction, mm: how far a strip runs to cut through.
    /// </summary>
    public static double PastRim(Region outline) => outline.Loops.SelectMany(loop => loop).Max(point => point.Length) + 1;

    /// <summary>A strip along a direction through a point.</summary>
    /// <param name="through">A point on its middle line.</param>
    /// <param name="direction">Where it runs.</param>
    /// <param name="width">Its width, mm.</param>
    /// <param name="from">Where it starts, mm from the point.</param>
    /// <param name="to">Where it ends, mm from the point.</param>
    public static Region Along(Point2 through, Angle direction, double width, double from, double to) =>
        PartEnvelope.Rectangle(
            through + ((from + to) / 2 * Point2.Polar(1, direction)), to - from, width, direction);
}
