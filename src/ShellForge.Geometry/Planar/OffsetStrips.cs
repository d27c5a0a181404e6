using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Planar;

/// <summary>
/// The band to the right of a loop: all points within a distance of it on that side, as simple polygons whose union is the
/// band. Each side of the loop gives a rectangle and each left turn a wedge of its disc; as many neighbours as stay free of
/// crossings are joined into one strip, so that a wall of 250 sides is one polygon and not 500.
/// </summary>
internal sealed class OffsetStrips
{
    private readonly ImmutableArray<Point2> _loop;
    private readonly double _distance;

    // For the corner at the start of each side: the outer points there, ending with the first outer point of that side.
    // Null where the strip breaks: a right turn whose rectangles overlap.
    private readonly Point2[]?[] _joints;
    private readonly Point2[] _normals;

    public OffsetStrips(ImmutableArray<Point2> loop, double distance)
    {
        _loop = loop;
        _distance = distance;
        _normals = [.. Enumerable.Range(0, loop.Length).Select(i => Normal(loop[i], loop[(i + 1) % loop.Length]))];
        _joints = [.. Enumerable.Range(0, loop.Length).Select(Joint)];
    }

    /// <summary>
    /// The far outline of a band that goes round in one, running as the loop does; empty where there is no such: the band overlaps itself,
    /// or closes up.
    /// </summary>
    public ImmutableArray<Point2> FarOutline()
    {
        if (_joints.Any(joint => joint is null))
        {
            return [];
        }

        ImmutableArray<Point2> far = [.. Snapped(_joints.SelectMany(joint => joint!))];
        bool grows = Loop.SignedArea(_loop) > 0;
        if (far.Length < 3 || Loop.SignedArea(far) > 0 != grows)
        {
            return [];
        }

        return ApartLoops.Are(far, _loop) && (grows ? Loop.Encloses(far, _loop[0]) : Loop.Encloses(_loop, far[0])) ? far : [];
    }

    /// <summary>Simple polygons on the lattice whose union is the band.</summary>
    public IEnumerable<NetTopologySuite.Geometries.Geometry> Pieces()
    {
        int count = _loop.Length;
        int start = Math.Max(0, Array.FindIndex(_joints, j => j is null));
        var pieces = new List<NetTopologySuite.Geometries.Geometry>();
        int from = 0;
        for (int i = 1; i <= count; i++)
        {
            if (i == count || _joints[(start + i) % count] is null)
            {
                AddStrip(pieces, start + from, start + i);
                from = i;
            }
        }

        return pieces;
    }

    private static Point2 Normal(Point2 a, Point2 b)
    {
        Point2 along = b - a;
        return (1 / along.Length) * new Point2(along.Y, 0 - along.X);
    }

    // The strip along the sides from..to-1; halved until its parts are simple. One side alone always is.
    private void AddStrip(List<NetTopologySuite.Geometries.Geometry> pieces, int from, int to)
    {
        int count = _loop.Length;
        Point2 End(int side) => _loop[(side + 1) % count] + (_distance * _normals[side % count]);
        Point2 Start(int side) => _loop[side % count] + (_distance * _normals[side % count]);

        List<Point2> outline = [Start(from)];
        for (int side = from + 1; side < to; side++)
        {
            outline.AddRange(_joints[side % count]!);
        }

        outline.Add(End(to - 1));
        for (int corner = to; corner >= from; corner--)
        {
            outline.Add(_loop[corner % count]);
        }

        ImmutableArray<Point2> snapped = [.. Snapped(outline)];
        if (snapped.Length >= 3 && ApartLoops.Are(snapped))
        {
            pieces.Add(Overlay.RawPolygon(snapped, []));
        }
        else if (to - from > 1)
        {
            int middle = (from + to) / 2;
            AddStrip(pieces, from, middle);
            AddStrip(pieces, middle, to);
            AddWedge(pieces, middle % count);
        }
    }

    // Where a strip was halved, the corner between the halves may need its wedge.
    private void AddWedge(List<NetTopologySuite.Geometries.Geometry> pieces, int corner)
    {
        if (_joints[corner] is not { } joint)
        {
            return;
        }

        int before = (corner + _loop.Length - 1) % _loop.Length;
        Point2 v = _loop[corner];
        ImmutableArray<Point2> wedge =
            [.. Snapped([v, v + (_distance * _normals[before]), .. joint, v + (_distance * _normals[corner])])];
        if (wedge.Length >= 3 && ApartLoops.Are(wedge))
        {
            pieces.Add(Overlay.RawPolygon(wedge, []));
        }
    }

    private Point2[]? Joint(int corner)
    {
        int count = _loop.Length;
        int before = (corner + count - 1) % count;
        Point2 v = _loop[corner];
        Point2 first = _normals[before];
        Point2 second = _normals[corner];
        double cosine = Point2.Dot(first, second);
        double sine = Point2.Cross(first, second);

        // Both offset lines meet at v + d (n1 + n2) / (1 + n1.n2), at the distance d / cos(turn / 2).
        double halfCosine = Math.Sqrt(Math.Max(0, (1 + cosine) / 2));
        if (cosine > 0 && _distance * ((1 / halfCosine) - 1) <= Tolerances.ChordError)
        {
            double used = _distance * Math.Abs(sine) / (1 + cosine);
            double room = Math.Min(
                Point2.Distance(_loop[before], v), Point2.Distance(v, _loop[(corner + 1) % count])) / 2;
            if (sine > 0 || used < room)
            {
                return [v + ((_distance / (1 + cosine)) * (first + second))];
            }
        }

        if (sine <= 0)
        {
            return null;
        }

        Angle sweep = Angle.FromDegrees(Trigonometry.Atan2Degrees(sine, cosine));
        return [.. Arc.Corners(v, _distance, Angle.Of(first), sweep, RingSide.Inside)];
    }

    private static List<Point2> Snapped(IEnumerable<Point2> points)
    {
        var snapped = new List<Point2>();
        foreach (Point2 p in points)
        {
            Point2 next = Lattice.Snap(p);
            if (snapped.Count == 0 || snapped[^1] != next)
            {
                snapped.Add(next);
            }
        }

        while (snapped.Count > 1 && snapped[^1] == snapped[0])
        {
            snapped.RemoveAt(snapped.Count - 1);
        }

        return snapped;
    }
}
