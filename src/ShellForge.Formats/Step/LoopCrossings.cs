using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Step;

/// <summary>
/// Runs that meet within a face, once chords became arcs and corners moved: across a strip narrower than that, one side meets the other.
/// </summary>
internal static class LoopCrossings
{
    // Sides closer than this meet for readers, which cut arcs into chords of their own: two micrometres, in steps.
    private const double LeastWidth = Tolerances.ChordError / 5 / Lattice.Step;

    /// <summary>The edges that meet another one, each as a run.</summary>
    public static IEnumerable<BorderRun> Of(FacedMesh boundary) =>
        Enumerable.Range(0, boundary.Loops.Length).SelectMany(face => OfFace(boundary, face));

    private static List<BorderRun> OfFace(FacedMesh boundary, int face)
    {
        bool IsAsMade(BorderRun run) => boundary.Round[run.Other] is null && !boundary.IsMoved(run);
        if (boundary.Round[face] is null && boundary.Loops[face].All(loop => loop.All(IsAsMade)))
        {
            return [];
        }

        Side[] sides = [.. Sides(boundary, face)];
        Array.Sort(sides, (a, b) => a.Least.CompareTo(b.Least));
        var meeting = new List<BorderRun>();
        var open = new List<Side>();
        foreach (Side side in sides)
        {
            open.RemoveAll(before => before.Most + LeastWidth < side.Least);
            foreach (Side before in open.Where(before => (before.MayMove || side.MayMove) && before.Meets(side, LeastWidth)))
            {
                meeting.Add(before.Run);
                meeting.Add(side.Run);
            }

            open.Add(side);
        }

        return meeting;
    }

    private static IEnumerable<Side> Sides(FacedMesh boundary, int face)
    {
        Func<Point3, Point2> flat = Unrolling.Of(boundary, face);
        return boundary.Loops[face].SelectMany(loop => WithoutShort([.. Sides(boundary, face, loop, flat)]));
    }

    // Ends of sides shorter than the file is accurate become one corner: the sides beside them share it.
    private static List<Side> WithoutShort(List<Side> loop)
    {
        List<Side> kept = [.. loop.Where(side => Point2.Distance(side.From, side.To) > WrittenCheck.Off)];
        for (int i = 0; i < kept.Count && kept.Count < loop.Count; i++)
        {
            kept[i] = kept[i] with { From = kept[(i + kept.Count - 1) % kept.Count].To };
        }

        return kept;
    }

    private static IEnumerable<Side> Sides(FacedMesh boundary, int face, List<BorderRun> loop, Func<Point3, Point2> flat)
    {
        foreach (BorderRun run in loop)
        {
            bool mayMove = boundary.Round[face] is not null || boundary.Round[run.Other] is not null || boundary.IsMoved(run);
            foreach ((Point3 from, Point3 to, BorderRun part) in boundary.Path(face, run))
            {
                yield return new Side(flat(from), flat(to), part, mayMove);
            }
        }
    }

    private sealed record Side(Point2 From, Point2 To, BorderRun Run, bool MayMove)
    {
        public double Least => Math.Min(From.X, To.X);

        public double Most => Math.Max(From.X, To.X);

        // Sides that follow each other meet where one turns back along the other.
        public bool Meets(Side other, double within)
        {
            if (From == other.To || From == other.From || To == other.From || To == other.To)
            {
                Point2 shared = From == other.To || From == other.From ? From : To;
                bool shorter = Point2.Distance(From, To) < Point2.Distance(other.From, other.To);
                (Side less, Side more) = shorter ? (this, other) : (other, this);
                Point2 end = less.From == shared ? less.To : less.From;
                return end != shared && more.Distance(end) <= Math.Min(within, Point2.Distance(end, shared) / 8);
            }

            double nearest = new[] { Distance(other.From), Distance(other.To), other.Distance(From), other.Distance(To) }.Min();
            return nearest <= within || (Parts(other.From, other.To) && other.Parts(From, To));
        }

        private double Distance(Point2 p)
        {
            Point2 along = To - From;
            double share = Math.Clamp(Point2.Dot(p - From, along) / Point2.Dot(along, along), 0, 1);
            return Point2.Distance(p, From + (share * along));
        }

        private bool Parts(Point2 a, Point2 b) => Turn(a) * Turn(b) < 0;

        private double Turn(Point2 p) => Point2.Cross(To - From, p - From);
    }
}
