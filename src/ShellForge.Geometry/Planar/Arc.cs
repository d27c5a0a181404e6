using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Planar;

/// <summary>Part of a circle as a chain of corners.</summary>
internal static class Arc
{
    /// <summary>
    /// Corners from one direction through a sweep, ends included. <see cref="RingSide.Inside"/>: all on the circle.
    /// <see cref="RingSide.Outside"/>: both ends on the circle, the corners between them where the tangents meet, so that the
    /// chain lies outside and leaves the ends along the tangents.
    /// </summary>
    public static IEnumerable<Point2> Corners(Point2 centre, double radius, Angle from, Angle sweep, RingSide side)
    {
        if (radius <= 0)
        {
            return [centre];
        }

        int sides = Sides(radius, sweep);
        Angle step = (1.0 / sides) * sweep;
        if (side == RingSide.Inside)
        {
            return Enumerable.Range(0, sides + 1).Select(i => centre + Point2.Polar(radius, from + (i * step)));
        }

        double cornerRadius = radius / (0.5 * step).Cos;
        return
        [
            centre + Point2.Polar(radius, from),
            .. Enumerable.Range(0, sides).Select(i => centre + Point2.Polar(cornerRadius, from + ((i + 0.5) * step))),
            centre + Point2.Polar(radius, from + sweep),
        ];
    }

    /// <summary>How many sides a sweep needs to stay within the chord error; the share of a full ring's, rounded up.</summary>
    public static int Sides(double radius, Angle sweep) =>
        Math.Max(1, (int)Math.Ceiling((Ring.CountFor(radius) * (Math.Abs(sweep.Degrees) / 360)) - Tolerances.WholeStep));
}
