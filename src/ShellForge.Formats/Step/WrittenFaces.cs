using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Step;

/// <summary>An edge of a file as one of its two faces has it.</summary>
/// <param name="Key">What both faces know the edge by.</param>
/// <param name="From">The corner where the edge begins.</param>
/// <param name="To">The corner where it ends.</param>
/// <param name="Kind">Its curve.</param>
/// <param name="Round">The surface that an arc or ellipse lies on; null for lines.</param>
/// <param name="Plane">The direction across the plane of an ellipse.</param>
/// <param name="Ahead">Whether the face runs along it as it runs itself.</param>
internal sealed record WrittenSide(int Key, int From, int To, CurveKind Kind, RoundSurface? Round, Point3 Plane, bool Ahead)
{
    /// <summary>The corner where the face comes to it.</summary>
    public int Start => Ahead ? From : To;

    /// <summary>The corner where the face leaves it.</summary>
    public int Finish => Ahead ? To : From;

    // Between these the largest round there is strays from a chord by two hundredths of a millimetre.
    private const double PartDegrees = 2;

    /// <summary>Points of the curve, in the order in which the face runs.</summary>
    public List<Point3> Points(FacedMesh boundary)
    {
        Point3 from = boundary.Corner(From), to = boundary.Corner(To);
        double parts = Round is null ? 2 : Math.Max(2, Math.Ceiling(Turn(Round, from, to).Degrees / PartDegrees));
        List<Point3> points = [from];
        for (int i = 1; i < parts; i++)
        {
            points.Add(At(boundary, i / parts));
        }

        points.Add(to);
        if (!Ahead)
        {
            points.Reverse();
        }

        return points;
    }

    /// <summary>Where the curve is at a share of its way, as it runs itself: counter-clockwise about its axis, seen from above.</summary>
    public Point3 At(FacedMesh boundary, double share)
    {
        Point3 from = boundary.Corner(From), to = boundary.Corner(To);
        if (Round is null)
        {
            return from + (share * (to - from));
        }

        Angle towards = Angle.Of(from.XY - Round.Axis) + (share * Turn(Round, from, to));
        Point2 at = Round.Axis + Point2.Polar(Round.RadiusAt(from.Z), towards);
        double z = Kind == CurveKind.Ellipse ? from.Z - (Point2.Dot(Plane.XY, at - from.XY) / Plane.Z) : from.Z;
        return new Point3(at.X, at.Y, z);
    }

    /// <summary>How far an arc or ellipse turns about its axis.</summary>
    public static Angle Turn(RoundSurface round, Point3 from, Point3 to) =>
        (Angle.Of(to.XY - round.Axis) - Angle.Of(from.XY - round.Axis)).Normalized;
}

/// <summary>The loops of each face as they are written.</summary>
internal static class WrittenFaces
{
    /// <summary>The loops of each face, in the order of the boundary's.</summary>
    public static List<List<WrittenSide>>[] Of(FacedMesh boundary) =>
        [.. boundary.Loops.Select((loops, face) => loops.Select(loop => loop.Select(run => Side(boundary, face, run)).ToList()).ToList())];

    // Arcs run counter-clockwise about their axis; lines along the half-edge with the smaller number. Either way both faces find one edge.
    private static WrittenSide Side(FacedMesh boundary, int face, BorderRun run)
    {
        HalfEdges edges = boundary.Edges;
        int first = run.Edges[0];
        int last = run.Edges[^1];
        CurveKind kind = boundary.Curve(face, run);
        RoundSurface? round = kind == CurveKind.Line ? null : boundary.Round[face] ?? boundary.Round[run.Other];
        bool ahead = round is not null ? RunsCounterClockwise(edges, first, round.Axis) : first < edges.Twin(last);
        (int from, int to) = ahead ? (edges.From(first), edges.To(last)) : (edges.To(last), edges.From(first));
        return new WrittenSide(
            Math.Min(run.Edges.Min(), run.Edges.Min(edges.Twin)), from, to, kind, round,
            kind == CurveKind.Ellipse ? boundary.Normal(boundary.Round[face] is null ? face : run.Other) : Point3.Zero, ahead);
    }

    private static bool RunsCounterClockwise(HalfEdges edges, int e, Point2 axis) =>
        Point2.Cross(edges.Start(e).XY - axis, edges.At(edges.To(e)).XY - axis) > 0;
}
