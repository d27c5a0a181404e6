using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Planar;

/// <content>How regions are made.</content>
public sealed partial class Region
{
    /// <summary>A disc. The centre goes onto the lattice, so that every disc of one ring has the same corners.</summary>
    public static Region Disc(Point2 centre, Ring ring)
    {
        Point2 shift = Lattice.Snap(centre);
        ImmutableArray<Point2> corners = [.. ring.Points.Select(p => Lattice.Snap(p + shift))];
        return new([[Loop.Canonical(corners, counterClockwise: true, ImmutableHashSet<Point2>.Empty)]]);
    }

    /// <summary>The ring-shaped area between two coaxial rings about the origin.</summary>
    /// <exception cref="ArgumentException">The inner ring does not lie inside the outer one.</exception>
    public static Region Annulus(Ring outer, Ring inner) => Polygon(outer.Points, inner.Points);

    /// <summary>The area inside an outline, without holes. Outline and holes may run in either direction.</summary>
    /// <param name="ccw">Corners in mm, the first not repeated.</param>
    /// <param name="holes">Outlines of holes, inside the outline, apart from each other; single points may touch.</param>
    /// <exception cref="ArgumentException">Fewer than 3 corners, or sides that cross or overlap; the message has the place.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A corner is not a number or lies outside the domain of ±256 mm.</exception>
    public static Region Polygon(IReadOnlyList<Point2> ccw, params IReadOnlyList<IReadOnlyList<Point2>> holes)
    {
        foreach (IReadOnlyList<Point2> loop in holes.Prepend(ccw))
        {
            if (loop.Count < 3)
            {
                throw new ArgumentException($"An outline needs at least 3 corners, not {loop.Count}.");
            }

            foreach (Point2 p in loop)
            {
                _ = Lattice.Snap(p);
            }
        }

        return new(Overlay.Checked(ccw, holes));
    }

    /// <summary>The rectangle between two corners.</summary>
    /// <exception cref="ArgumentException">No width or no height is left.</exception>
    public static Region Rectangle(Point2 min, Point2 max)
    {
        Point2 low = Lattice.Snap(min);
        Point2 high = Lattice.Snap(max);
        if (!(low.X < high.X && low.Y < high.Y))
        {
            throw new ArgumentException(FormattableString.Invariant(
                $"A rectangle from ({min.X}, {min.Y}) to ({max.X}, {max.Y}) has no area."));
        }

        return new([[[low, new Point2(high.X, low.Y), high, new Point2(low.X, high.Y)]]]);
    }

    /// <summary>A rectangle whose corners are arcs.</summary>
    /// <param name="centre">Its middle.</param>
    /// <param name="width">Size along x in mm.</param>
    /// <param name="height">Size along y in mm.</param>
    /// <param name="cornerRadius">Radius of the corners in mm, from 0 to half the smaller size.</param>
    /// <param name="side">Inside: a plug, nothing outside the true shape. Outside: an opening, nothing of it lost.</param>
    /// <exception cref="ArgumentOutOfRangeException">A size is not above 0, or the radius does not fit.</exception>
    public static Region RoundedRectangle(
        Point2 centre, double width, double height, double cornerRadius, RingSide side = RingSide.Inside)
    {
        RefuseUnless(width > 0, width, nameof(width));
        RefuseUnless(height > 0, height, nameof(height));
        RefuseUnless(cornerRadius >= 0 && 2 * cornerRadius <= Math.Min(width, height), cornerRadius, nameof(cornerRadius));
        double x = (width / 2) - cornerRadius;
        double y = (height / 2) - cornerRadius;
        Point2 snapped = Lattice.Snap(centre);
        Point2[] middles = [new(x, y), new(-x, y), new(-x, -y), new(x, -y)];
        return Polygon([.. Distinct(middles.SelectMany((m, i) =>
            Arc.Corners(snapped + m, cornerRadius, Angle.FromDegrees(90 * i), Angle.FromDegrees(90), side)))]);
    }

    /// <summary>All points within half a width of a straight line: a slot with round ends.</summary>
    /// <param name="from">Centre of the arc at one end.</param>
    /// <param name="to">Centre of the arc at the other end; may be the same point.</param>
    /// <param name="width">Width in mm, above 0.</param>
    /// <param name="side">Outside: an opening, nothing of it lost. Inside: a bar, nothing outside the true shape.</param>
    /// <exception cref="ArgumentOutOfRangeException">The width is not above 0.</exception>
    public static Region Slot(Point2 from, Point2 to, double width, RingSide side = RingSide.Outside)
    {
        RefuseUnless(width > 0, width, nameof(width));
        Angle along = Angle.Of(to - from);
        Angle quarter = Angle.FromDegrees(90);
        Angle half = Angle.FromDegrees(180);
        return Polygon([.. Distinct(
        [
            .. Arc.Corners(to, width / 2, along - quarter, half, side),
            .. Arc.Corners(from, width / 2, along + quarter, half, side),
        ])]);
    }

    /// <summary>
    /// The part of an annulus about the origin between two directions. Corners of both arcs lie on their circles, at the count
    /// of a full ring of the outer radius.
    /// </summary>
    /// <param name="inner">Inner radius in mm, from 0: a wedge to the centre.</param>
    /// <param name="outer">Outer radius in mm, above the inner one.</param>
    /// <param name="from">Direction of the first straight side.</param>
    /// <param name="sweep">Counter-clockwise extent, above 0 and below a full turn; a full turn is an annulus.</param>
    /// <exception cref="ArgumentOutOfRangeException">A radius or the sweep is out of range.</exception>
    public static Region Sector(double inner, double outer, Angle from, Angle sweep)
    {
        RefuseUnless(inner >= 0, inner, nameof(inner));
        RefuseUnless(outer > inner, outer, nameof(outer));
        RefuseUnless(sweep.Degrees is > 0 and <= 360, sweep.Degrees, nameof(sweep));
        if (sweep.Degrees >= 360)
        {
            Ring rim = new(outer, RingSide.Inside, Ring.CountFor(outer), from);
            return inner > 0 ? Annulus(rim, rim.Coaxial(inner, RingSide.Inside)) : Disc(Point2.Origin, rim);
        }

        int sides = Arc.Sides(outer, sweep);
        IEnumerable<Angle> directions = Enumerable.Range(0, sides + 1).Select(i => from + ((double)i / sides * sweep));
        IEnumerable<Point2> back = inner > 0 ? directions.Reverse().Select(d => Point2.Polar(inner, d)) : [Point2.Origin];
        return Polygon([.. directions.Select(d => Point2.Polar(outer, d)), .. back]);
    }

    private static IEnumerable<Point2> Distinct(IEnumerable<Point2> corners)
    {
        Point2? last = null;
        foreach (Point2 p in corners)
        {
            if (p != last)
            {
                yield return p;
            }

            last = p;
        }
    }

    private static void RefuseUnless(bool fits, double value, string name)
    {
        if (!fits)
        {
            throw new ArgumentOutOfRangeException(name, value, $"The {name} is out of range.");
        }
    }
}
