using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Planar;

/// <summary>
/// The sides of outlines in runs of neighbours, each run with its box: an outline winds through the plane, so a short run stays in a
/// small box, and most runs are ruled out by theirs.
/// </summary>
internal sealed class OutlineRuns
{
    private const int RunLength = 16;

    private readonly (Point2 From, Point2 To)[] _sides;
    private readonly Box2[] _boxes;

    // Where a near side was found last: who asks next mostly asks nearby. Threads may overwrite it; it only says where to look first.
    private int _lastNear;

    public OutlineRuns(ImmutableArray<ImmutableArray<Point2>> loops)
    {
        _sides = [.. loops.SelectMany(loop => loop.Select((p, i) => (p, loop[(i + 1) % loop.Length])))];
        _boxes = new Box2[(_sides.Length + RunLength - 1) / RunLength];
        for (int run = 0; run < _boxes.Length; run++)
        {
            Box2 box = Box2.Empty;
            foreach ((Point2 from, Point2 to) in Run(run))
            {
                box = box.Including(from).Including(to);
            }

            _boxes[run] = box;
        }
    }

    /// <summary>Distance from a point to the nearest side, mm.</summary>
    public double Distance(Point2 point)
    {
        double best = double.PositiveInfinity;
        for (int run = 0; run < _boxes.Length; run++)
        {
            if (SquareDistance(_boxes[run], new Box2(point, point)) < best)
            {
                foreach ((Point2 from, Point2 to) in Run(run))
                {
                    best = Math.Min(best, SquareDistance(point, from, to));
                }
            }
        }

        return Math.Sqrt(best);
    }

    /// <summary>
    /// Whether a point lies inside or on an outline, told exactly: a ray to the right of it crosses an odd number of sides.
    /// </summary>
    public bool Encloses(Point2 point)
    {
        bool isInside = false;
        for (int run = 0; run < _boxes.Length; run++)
        {
            if (_boxes[run].Min.Y > point.Y || _boxes[run].Max.Y < point.Y || _boxes[run].Max.X < point.X)
            {
                continue;
            }

            foreach ((Point2 from, Point2 to) in Run(run))
            {
                if ((from.Y > point.Y) != (to.Y > point.Y))
                {
                    int side = FloatingOrientation.Sign2(from.X, from.Y, to.X, to.Y, point.X, point.Y);
                    if (side == 0)
                    {
                        return true;
                    }

                    isInside ^= side > 0 == to.Y > from.Y;
                }
                else if (from.Y == point.Y && to.Y == point.Y && point.X >= Math.Min(from.X, to.X) && point.X <= Math.Max(from.X, to.X))
                {
                    return true;
                }
                else if (from == point || to == point)
                {
                    return true;
                }
            }
        }

        return isInside;
    }

    /// <summary>
    /// Whether a side is no farther from a point than a distance, mm: quick where the same side or its neighbours are asked for.
    /// </summary>
    public bool IsNear(Point2 point, double distance)
    {
        double most = distance * distance;
        var place = new Box2(point, point);
        int start = _lastNear;
        for (int i = 0; i < _boxes.Length; i++)
        {
            int run = start + i < _boxes.Length ? start + i : start + i - _boxes.Length;
            if (SquareDistance(_boxes[run], place) <= most)
            {
                foreach ((Point2 from, Point2 to) in Run(run))
                {
                    if (SquareDistance(point, from, to) <= most)
                    {
                        _lastNear = run;
                        return true;
                    }
                }
            }
        }

        return false;
    }

    /// <summary>Distance between the nearest sides of two outlines, mm: 0 where they touch or cross.</summary>
    public double Distance(OutlineRuns other)
    {
        double best = double.PositiveInfinity;
        for (int run = 0; run < _boxes.Length; run++)
        {
            for (int across = 0; across < other._boxes.Length; across++)
            {
                if (SquareDistance(_boxes[run], other._boxes[across]) < best)
                {
                    foreach ((Point2 from, Point2 to) in Run(run))
                    {
                        foreach ((Point2 u, Point2 w) in other.Run(across))
                        {
                            best = Math.Min(best, SquareDistance(from, to, u, w));
                        }
                    }
                }
            }
        }

        return Math.Sqrt(best);
    }

    private ReadOnlySpan<(Point2 From, Point2 To)> Run(int run) =>
        _sides.AsSpan(run * RunLength, Math.Min(RunLength, _sides.Length - (run * RunLength)));

    private static double SquareDistance(in Box2 a, in Box2 b)
    {
        double x = Math.Max(0, Math.Max(a.Min.X - b.Max.X, b.Min.X - a.Max.X));
        double y = Math.Max(0, Math.Max(a.Min.Y - b.Max.Y, b.Min.Y - a.Max.Y));
        return (x * x) + (y * y);
    }

    private static double SquareDistance(Point2 p, Point2 from, Point2 to)
    {
        Point2 side = to - from;
        double length = Point2.Dot(side, side);
        double share = length == 0 ? 0 : Math.Clamp(Point2.Dot(p - from, side) / length, 0, 1);
        Point2 way = p - (from + (share * side));
        return Point2.Dot(way, way);
    }

    private static double SquareDistance(Point2 a, Point2 b, Point2 c, Point2 d)
    {
        if (LatticeOrientation.Sign2(a.X, a.Y, b.X, b.Y, c.X, c.Y) * LatticeOrientation.Sign2(a.X, a.Y, b.X, b.Y, d.X, d.Y) < 0
            && LatticeOrientation.Sign2(c.X, c.Y, d.X, d.Y, a.X, a.Y) * LatticeOrientation.Sign2(c.X, c.Y, d.X, d.Y, b.X, b.Y) < 0)
        {
            return 0;
        }

        return Math.Min(
            Math.Min(SquareDistance(a, c, d), SquareDistance(b, c, d)), Math.Min(SquareDistance(c, a, b), SquareDistance(d, a, b)));
    }
}
