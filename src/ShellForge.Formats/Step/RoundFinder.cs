using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Step;

/// <summary>
/// Finds the cylinders and cones that facets stand for: rows of facets that turn by one angle about one axis, whatever features have cut
/// out of them. The corners between facets of a row lie on the surface; facets are its chords, inside it by no more than the chord error.
/// </summary>
internal sealed class RoundFinder
{
    // A full circle has 32 sides at least, so neighbours turn by 11.25 degrees at most; small roundings turn faster, as long as their
    // chords stray from the arc by no more than the chord error.
    private const double MostTurnDegrees = 12;
    private const double MostTurnOfSmallDegrees = 50;
    private const double LeastTurnDegrees = 0.2;

    // Four facets' corners on one circle are no chance.
    private const int FewestInRow = 3;

    // Corners were rounded by up to a step in each direction: so far they lie off, and so far normals of facets of a width stray.
    private const double CornerSteps = 5;
    private const double NormalSteps = 8;

    private readonly FacetGraph _graph;
    private readonly List<Found> _found = [];
    private readonly int[] _surface;

    private RoundFinder(FacetGraph graph)
    {
        _graph = graph;
        _surface = new int[graph.Count];
        Array.Fill(_surface, -1);
    }

    /// <summary>The surface of each facet; null for those that are flat.</summary>
    public static RoundSurface?[] Of(FacetGraph graph)
    {
        var finder = new RoundFinder(graph);

        // Upright axes first: a rounded edge round a housing is rows round it, not across.
        finder.Look(upright: true);
        finder.Look(upright: false);
        finder.TakeStrays();
        return [.. finder._surface.Select(number => number < 0 ? null : finder._found[number].Surface)];
    }

    private void Look(bool upright)
    {
        for (int facet = 0; facet < _graph.Count; facet++)
        {
            foreach (FacetSide side in _graph.Sides(facet))
            {
                if (_surface[facet] >= 0)
                {
                    break;
                }

                if (_surface[side.Other] < 0 && MayTurn(_graph.Turn(facet, side))
                    && (!upright || Math.Abs(_graph.Normals[facet].Z - _graph.Normals[side.Other].Z) <= Straying(facet, side.Other)))
                {
                    Try(facet, side, upright);
                }
            }
        }
    }

    private static bool MayTurn(double turn) => Math.Abs(turn) is > LeastTurnDegrees and < MostTurnOfSmallDegrees;

    private void Try(int facet, FacetSide side, bool upright)
    {
        Point3 axis = upright ? new Point3(0, 0, 1) : Along(side.Edges[0]);
        List<int> row = Row(facet, side, axis);
        if (row.Count < FewestInRow)
        {
            return;
        }

        axis = upright ? axis : Axis(row, axis);
        double lean = row.Average(f => Point3.Dot(_graph.Normals[f], axis));
        List<Point3> corners = CornersBetween(row);
        double turn = Math.Abs(_graph.Turn(facet, side));
        if (Math.Abs(lean) > MostLean || Fitted(corners, axis, lean, row) is not { } surface)
        {
            return;
        }

        // Between a facet's plane and its neighbour's lies less than the turn about the axis, the more they lean.
        double half = Math.Clamp(turn / Math.Sqrt(1 - (lean * lean)) / 2, 0, 90);
        double sagging = 1 - Angle.FromDegrees(half).Cos;
        double widest = corners.Max(p => surface.RadiusAt(surface.Height(p)));
        if ((2 * half > MostTurnDegrees && widest * sagging > Tolerances.ChordError / Lattice.Step)
            || corners.Any(p => surface.RadiusAt(surface.Height(p)) <= CornerSteps))
        {
            return;
        }

        _found.Add(new Found(OnKnownAxis(surface, corners) ?? surface, lean, sagging, FacesOut(surface, row[0])));
        Grow(row, _found.Count - 1);
    }

    // A surface that leans this much against its axis is all but flat.
    private const double MostLean = 0.97;

    private RoundSurface? Fitted(List<Point3> corners, Point3 axis, double lean, List<int> row)
    {
        bool facesOut = true;
        double slope = -lean / Math.Sqrt(1 - (lean * lean));
        for (int attempt = 0; attempt < 2; attempt++)
        {
            if (RoundFit.Of(corners, axis, slope) is { } surface && FacesOut(surface, row[0]) == facesOut)
            {
                return surface;
            }

            (facesOut, slope) = (false, -slope);
        }

        return null;
    }

    // A short arc tells its centre badly: where an axis that is known already does as well, it was meant.
    private RoundSurface? OnKnownAxis(RoundSurface surface, List<Point3> corners)
    {
        foreach (RoundSurface known in _found.Select(found => found.Surface))
        {
            if (Point3.Cross(known.Axis, surface.Axis).Length <= 0 && RoundFit.About(known, corners, surface.Slope) is { } moved)
            {
                return moved;
            }
        }

        return null;
    }

    private bool FacesOut(RoundSurface surface, int facet) =>
        Point3.Dot(surface.Normal(_graph.Corners(facet).First()), _graph.Normals[facet]) > 0;

    // On from a facet over the side opposite to where one came from, as long as the turn and the lean against the axis stay.
    private List<int> Row(int facet, FacetSide side, Point3 axis)
    {
        var row = new List<int> { facet, side.Other };
        Walk(row, facet, side, axis);
        row.Reverse();
        Walk(row, side.Other, _graph.Sides(side.Other).Single(back => back.Other == facet), axis);
        return row;
    }

    private void Walk(List<int> row, int from, FacetSide over, Point3 axis)
    {
        double turn = _graph.Turn(from, over);
        double lean = Point3.Dot(_graph.Normals[from], axis);
        double across = Across(over.Other, axis);
        for (int at = over.Other; ;)
        {
            HashSet<int> corners = [.. over.Edges.SelectMany(e => new[] { _graph.Edges.From(e), _graph.Edges.To(e) })];
            FacetSide? next = _graph.Sides(at).Where(side => _surface[side.Other] < 0 && !row.Contains(side.Other)
                    && !side.Edges.Exists(e => corners.Contains(_graph.Edges.From(e)) || corners.Contains(_graph.Edges.To(e)))
                    && Math.Abs(Across(side.Other, axis) - across) <= 2 * NormalSteps
                    && Math.Abs(_graph.Turn(at, side) - turn) <= Straying(at, side.Other) * DegreesPerShare
                    && Math.Abs(Point3.Dot(_graph.Normals[side.Other], axis) - lean) <= Straying(from, side.Other))
                .MinBy(side => Math.Abs(_graph.Turn(at, side) - turn));
            if (next is null)
            {
                return;
            }

            row.Add(next.Other);
            (at, over) = (next.Other, next);
        }
    }

    // How wide a facet is at right angles to the axis. The straight side of a slot turns like the chords of its ends, but is longer.
    private double Across(int facet, Point3 axis)
    {
        Point3 way = Point3.Cross(axis, _graph.Normals[facet]);
        double[] along = [.. _graph.Corners(facet).Select(p => Point3.Dot(p, way))];
        return (along.Max() - along.Min()) / Math.Max(RoundSurface.SameDirection, way.Length);
    }

    private const double DegreesPerShare = 180 / Math.PI;

    // How far normals of facets as narrow as these may stray.
    private double Straying(int a, int b) => NormalSteps / Math.Max(1, Math.Min(Width(a), Width(b)));

    private double Width(int facet)
    {
        // Twice the area over the way round is about the width of a long facet.
        IReadOnlyList<FacetSide> sides = _graph.Sides(facet);
        double around = 0;
        Point3 area = Point3.Zero;
        foreach (int e in sides.SelectMany(side => side.Edges))
        {
            Point3 from = _graph.Edges.Start(e), to = _graph.Edges.At(_graph.Edges.To(e));
            around += Point3.Distance(from, to);
            area += Point3.Cross(from, to);
        }

        return area.Length / Math.Max(1, around);
    }

    private List<Point3> CornersBetween(List<int> row)
    {
        HashSet<int> members = [.. row];
        return [.. row.SelectMany(f => _graph.Sides(f)).Where(side => members.Contains(side.Other)).SelectMany(side => side.Edges)
            .Select(_graph.Edges.From).Distinct().Select(_graph.Edges.At)];
    }

    private Point3 Along(int e)
    {
        Point3 way = _graph.Edges.At(_graph.Edges.To(e)) - _graph.Edges.Start(e);
        return 1 / way.Length * way;
    }

    // Edges between the facets of a cylinder all run along its axis, and the longest tell it best.
    private Point3 Axis(List<int> row, Point3 about)
    {
        Point3 sum = Point3.Zero;
        for (int i = 0; i + 1 < row.Count; i++)
        {
            foreach (int e in _graph.Sides(row[i]).Single(side => side.Other == row[i + 1]).Edges)
            {
                Point3 way = _graph.Edges.At(_graph.Edges.To(e)) - _graph.Edges.Start(e);
                sum += Point3.Dot(way, about) < 0 ? -1 * way : way;
            }
        }

        return Snapped(1 / sum.Length * sum);
    }

    // Axes along x, y or z to this sine were meant so: short edges tell theirs no better.
    private const double MeantAlong = 2e-3;

    private static Point3 Snapped(Point3 axis)
    {
        foreach (Point3 main in new Point3[] { new(0, 0, 1), new(1, 0, 0), new(0, 1, 0) })
        {
            if (Point3.Cross(axis, main).Length <= MeantAlong)
            {
                return main;
            }
        }

        return axis.Z < 0 ? -1 * axis : axis;
    }

    private void Grow(List<int> row, int number)
    {
        var waiting = new Stack<int>(row);
        row.ForEach(f => _surface[f] = number);
        while (waiting.TryPop(out int facet))
        {
            foreach (FacetSide side in _graph.Sides(facet))
            {
                if (_surface[side.Other] < 0 && Fits(side.Other, number))
                {
                    _surface[side.Other] = number;
                    waiting.Push(side.Other);
                }
            }
        }
    }

    private bool Fits(int facet, int number)
    {
        Found found = _found[number];
        RoundSurface surface = found.Surface;
        double straying = Math.Max(Straying(facet, facet), RoundSurface.SameDirection);
        return Math.Abs(Point3.Dot(_graph.Normals[facet], surface.Axis) - found.Lean) <= straying
            && _graph.Corners(facet).All(p =>
                surface.Distance(p) <= CornerSteps
                && surface.Distance(p) >= -CornerSteps - (found.Sagging * surface.RadiusAt(surface.Height(p))))
            && FacesOut(surface, facet) == found.FacesOut;
    }

    // What a feature cut off from a row is still its surface's.
    private void TakeStrays()
    {
        for (int facet = 0; facet < _graph.Count; facet++)
        {
            for (int number = 0; _surface[facet] < 0 && number < _found.Count; number++)
            {
                if (Fits(facet, number))
                {
                    _surface[facet] = number;
                }
            }
        }
    }

    /// <summary>A surface that a row told.</summary>
    /// <param name="Surface">The surface.</param>
    /// <param name="Lean">How facets' normals lean along its axis.</param>
    /// <param name="Sagging">What share of the radius its chords lie inside it.</param>
    /// <param name="FacesOut">Whether facets look away from the axis.</param>
    private sealed record Found(RoundSurface Surface, double Lean, double Sagging, bool FacesOut);
}
