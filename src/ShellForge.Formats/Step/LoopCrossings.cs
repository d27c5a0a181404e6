using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Step;

/// <summary>
/// Runs that cross within a face, once chords became arcs and corners moved: across a strip narrower than that, one side meets the other.
/// </summary>
internal static class LoopCrossings
{
    // An arc closer to a corner than this goes through it, steps; readers lose such a face.
    private const double LeastWidth = 4 * Tolerances.FlatnessSteps;

    /// <summary>The runs that meet another one.</summary>
    public static IEnumerable<BorderRun> Of(Boundary boundary) =>
        Enumerable.Range(0, boundary.Loops.Length).SelectMany(face => OfFace(boundary, face));

    private static List<BorderRun> OfFace(Boundary boundary, int face)
    {
        RoundSurface? round = boundary.Round[face];
        bool unchanged = round is null
            && boundary.Loops[face].All(loop => loop.All(run => boundary.Round[run.Other] is null && !boundary.IsMoved(run)));
        if (unchanged)
        {
            return [];
        }

        Side[] sides = [.. Sides(boundary, face)];
        BorderRun[] touching = [.. Touching(boundary, face, sides)];
        if (touching.Length > 0)
        {
            return [.. touching];
        }

        Array.Sort(sides, (a, b) => a.Least.CompareTo(b.Least));
        var crossing = new List<BorderRun>();
        var open = new List<Side>();
        foreach (Side side in sides)
        {
            open.RemoveAll(before => before.Most < side.Least);
            foreach (Side before in open.Where(before => before.Crosses(side)))
            {
                crossing.Add(before.Run);
                crossing.Add(side.Run);
            }

            open.Add(side);
        }

        return crossing;
    }

    // Arcs that pass through a corner of their face other than their ends: chords of another ring lie in the circle there.
    private static IEnumerable<BorderRun> Touching(Boundary boundary, int face, Side[] sides)
    {
        const double near = Tolerances.ChordError / Lattice.Step;
        if (boundary.Round[face] is not null)
        {
            yield break;
        }

        Func<Point3, Point2> flat = Flat(boundary.Normal(face));
        int[] corners = [.. boundary.Loops[face].SelectMany(loop => loop).Select(run => boundary.Edges.From(run.Edges[0])).Distinct()];
        foreach (IGrouping<BorderRun, Side> arc in sides.GroupBy(side => side.Run))
        {
            BorderRun run = arc.Key;
            if (boundary.Round[run.Other] is not { } round || boundary.Curve(face, run) == CurveKind.Line)
            {
                continue;
            }

            int first = boundary.Edges.From(run.Edges[0]), last = boundary.Edges.To(run.Edges[^1]);
            if (corners.Any(corner => corner != first && corner != last && Math.Abs(round.Off(boundary.Corner(corner))) <= LeastWidth
                && arc.Any(side => side.IsNear(flat(boundary.Corner(corner)), near))))
            {
                yield return run;
            }
        }
    }

    private static IEnumerable<Side> Sides(Boundary boundary, int face)
    {
        Func<Point3, Point2> flat = boundary.Round[face] is { } round ? Unrolled(boundary, face, round) : Flat(boundary.Normal(face));
        foreach (BorderRun run in boundary.Loops[face].SelectMany(loop => loop))
        {
            Point2[] points = [.. boundary.Path(face, run).Select(flat)];
            for (int i = 1; i < points.Length; i++)
            {
                yield return new Side(points[i - 1], points[i], run);
            }
        }
    }

    private static Func<Point3, Point2> Flat(Point3 normal)
    {
        double x = Math.Abs(normal.X), y = Math.Abs(normal.Y), z = Math.Abs(normal.Z);
        return z >= x && z >= y ? p => p.XY : x >= y ? p => new Point2(p.Y, p.Z) : p => new Point2(p.Z, p.X);
    }

    // The turn from the middle of the widest gap: no face goes all the way round.
    private static Func<Point3, Point2> Unrolled(Boundary boundary, int face, RoundSurface round)
    {
        double Towards(Point3 p) => Angle.Of(p.XY - round.Axis).Normalized.Degrees;
        double[] around =
        [
            .. boundary.Loops[face].SelectMany(loop => loop).SelectMany(run => boundary.Path(face, run)).Select(Towards).Order(),
        ];
        int after = Enumerable.Range(0, around.Length).MaxBy(i => around[i] - (i == 0 ? around[^1] - 360 : around[i - 1]));
        double begin = (around[after] + (after == 0 ? around[^1] - 360 : around[after - 1])) / 2;
        return p => new Point2(Angle.FromDegrees(Towards(p) - begin).Normalized.Radians * round.Radius, p.Z);
    }

    private sealed record Side(Point2 From, Point2 To, BorderRun Run)
    {
        public double Least => Math.Min(From.X, To.X);

        public double Most => Math.Max(From.X, To.X);

        public bool Crosses(Side other) =>
            Parts(other.From, other.To) && other.Parts(From, To);

        public bool IsNear(Point2 p, double within)
        {
            Point2 along = To - From;
            double share = Math.Clamp(Point2.Dot(p - From, along) / Point2.Dot(along, along), 0, 1);
            return Point2.Distance(p, From + (share * along)) <= within;
        }

        private bool Parts(Point2 a, Point2 b) => Turn(a) * Turn(b) < 0;

        private double Turn(Point2 p) => Point2.Cross(To - From, p - From);
    }
}
