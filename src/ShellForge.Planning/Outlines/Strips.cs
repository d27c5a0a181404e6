using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Planning.Outlines;

/// <summary>
/// Strips in plan that run outward from the axis or along a line of sight: keys, notches and slots are cut from walls with them.
/// </summary>
public static class Strips
{
    // Strips end so far before the end of the space that a vertex may lie in, mm: what is put round them, and the play of what they cut,
    // stay in it. No housing reaches so far.
    private const double FromLimit = 16;

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

    /// <summary>A strip along a direction through a point. It ends where no housing reaches.</summary>
    /// <param name="through">A point on its middle line, within the space.</param>
    /// <param name="direction">Where it runs.</param>
    /// <param name="width">Its width, mm.</param>
    /// <param name="from">Where it starts, mm from the point.</param>
    /// <param name="to">Where it ends, mm from the point.</param>
    public static Region Along(Point2 through, Angle direction, double width, double from, double to)
    {
        double far = Lattice.LimitMillimetres - FromLimit - (width / 2);
        double Way(Angle way) => Reach(through.X, way.Cos, far, Reach(through.Y, way.Sin, far, double.PositiveInfinity));
        double last = Math.Min(to, Way(direction));
        double first = Math.Max(from, -Way(direction + Angle.FromDegrees(180)));
        return last < first && from <= to ? Region.Empty : PartEnvelope.Rectangle(
            through + ((first + last) / 2 * Point2.Polar(1, direction)), last - first, width, direction);
    }

    // How far a way leads until a coordinate is as far from the axis as it may be, mm.
    private static double Reach(double at, double slope, double far, double most) =>
        slope == 0 ? most : Math.Min(most, ((slope > 0 ? far : -far) - at) / slope);
}
