using ShellForge.Board.Description;
using ShellForge.Board.Yaml.Vocabulary;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Board.Yaml.Resolving;

/// <summary>Where the laminate is, for checks of what was said.</summary>
internal sealed class BoardSurface
{
    private readonly BoardOutline _outline;
    private readonly Region _region;
    private readonly Point2 _centre;

    /// <summary>The surface of an outline.</summary>
    /// <param name="outline">The edge, centred.</param>
    /// <param name="centre">The board's centre in the file's coordinates, to show places as the file writes them.</param>
    public BoardSurface(BoardOutline outline, Point2 centre)
    {
        _outline = outline;
        _region = outline.Region;
        _centre = centre;
    }

    /// <summary>The board's extent, to follow a fault.</summary>
    public string Extent => _outline switch
    {
        DiscOutline disc => $"expected places inside the disc of {NumberText.Written(disc.Diameter)} about [{Written(_centre)}]",
        RingOutline ring =>
            $"expected places between the bore of {NumberText.Written(ring.BoreDiameter)} and the edge of "
                + $"{NumberText.Written(ring.OuterDiameter)} about [{Written(_centre)}]",
        _ => $"expected places inside the outline, which spans "
            + $"{NumberText.Written(Math.Round(_region.Bounds.Max.X - _region.Bounds.Min.X, 2))} x "
            + $"{NumberText.Written(Math.Round(_region.Bounds.Max.Y - _region.Bounds.Min.Y, 2))} about [{Written(_centre)}]",
    };

    /// <summary>A place as the file writes it.</summary>
    public string Spell(Point2 centred) => $"[{Written(centred + _centre)}]";

    /// <summary>Whether a point lies on the laminate.</summary>
    public bool Holds(Point2 at) => _region.Contains(at);

    /// <summary>Whether a disc lies on the laminate as a whole.</summary>
    public bool HoldsDisc(Point2 at, double radius) => _region.Contains(at) && _region.DistanceToOutline(at) >= radius;

    /// <summary>Whether any of a turned rectangle lies on the laminate.</summary>
    public bool Touches(Point2 at, double length, double width, Angle rotation)
    {
        if (_region.Contains(at))
        {
            return true;
        }

        // Far-off places would leave the lattice's domain.
        double reach = (length + width) / 2;
        if (at.Length - reach > _outline.OuterRadius)
        {
            return false;
        }

        Point2[] corners = [.. Corners(at, length, width, rotation)];
        return corners.All(c => Math.Max(Math.Abs(c.X), Math.Abs(c.Y)) < Lattice.LimitMillimetres)
            && !Region.Polygon(corners).Intersect(_region).IsEmpty;
    }

    /// <summary>
    /// Distance from the origin along a direction to the outer edge, on the line that runs to the left of the origin by so much.
    /// Null when that line misses the board.
    /// </summary>
    public double? EdgeAlong(Angle direction, double left)
    {
        if (_outline is DiscOutline or RingOutline)
        {
            double squared = (_outline.OuterRadius * _outline.OuterRadius) - (left * left);
            return squared > 0 ? Math.Sqrt(squared) : null;
        }

        double? farthest = null;
        foreach (var loop in _region.Loops)
        {
            for (int i = 0; i < loop.Length; i++)
            {
                Point2 a = loop[i].Turned(-1 * direction);
                Point2 b = loop[(i + 1) % loop.Length].Turned(-1 * direction);
                if ((a.Y <= left) != (b.Y <= left))
                {
                    double along = a.X + ((left - a.Y) / (b.Y - a.Y) * (b.X - a.X));
                    farthest = Math.Max(farthest ?? along, along);
                }
            }
        }

        return farthest;
    }

    /// <summary>Corners of a turned rectangle, counter-clockwise.</summary>
    public static IEnumerable<Point2> Corners(Point2 at, double length, double width, Angle rotation) =>
        from corner in new[] { (1, 1), (-1, 1), (-1, -1), (1, -1) }
        select at + new Point2(corner.Item1 * length / 2, corner.Item2 * width / 2).Turned(rotation);

    private static string Written(Point2 at) =>
        $"{NumberText.Written(Math.Round(at.X, 3))}, {NumberText.Written(Math.Round(at.Y, 3))}";
}
