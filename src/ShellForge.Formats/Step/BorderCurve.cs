using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Step;

/// <summary>What a border between two faces runs along, from its first corner to its last, in lattice steps.</summary>
internal abstract record BorderCurve
{
    /// <summary>The curve of a run; null where the faces have none that ends at its corners.</summary>
    /// <param name="faces">The faces.</param>
    /// <param name="run">The run, on the side that it is drawn from.</param>
    /// <param name="face">The face on that side.</param>
    public static BorderCurve? Of(StepFaces faces, BorderRun run, int face)
    {
        Point3 start = faces.Corners[faces.Edges.From(run.Edges[0])];
        Point3 end = faces.Corners[faces.Edges.To(run.Edges[^1])];
        RoundSurface? here = faces.Round(face)?.Surface, there = faces.Round(run.Other)?.Surface;
        if (here is null && there is null)
        {
            return new LineCurve();
        }

        if (Point3.Distance(start, end) < Shortest)
        {
            return null;
        }

        RoundSurface round = here ?? there!;
        Point3[] between = [.. run.Edges.Skip(1).Select(faces.Edges.Start)];
        if (IsStraight(start, end, between, round))
        {
            return new LineCurve();
        }

        ISurface[] both = [faces.Surfaces[face], faces.Surfaces[run.Other]];
        return Arc(round, [start, .. between, end], both);
    }

    // Corners nearer than this, in steps, are one to a reader.
    private const double Shortest = 4 * Tolerances.FlatnessSteps;

    // Along a round surface a straight border is one of its own lines.
    private static bool IsStraight(Point3 start, Point3 end, Point3[] between, RoundSurface round)
    {
        Point3 way = end - start;
        double length = way.Length;
        Point3 along = 1 / length * way;
        Point3 middle = 0.5 * (start + end);
        return Math.Abs(round.Distance(middle)) <= Tolerances.FlatnessSteps
            && between.All(p => Point3.Cross(p - start, along).Length <= 2 * Tolerances.ChordError / Lattice.Step);
    }

    // All on one level of the surface, and what bulges between the corners lies on both.
    private static ArcCurve? Arc(RoundSurface round, Point3[] points, ISurface[] both)
    {
        double height = (round.Height(points[0]) + round.Height(points[^1])) / 2;
        if (points.Any(p => Math.Abs(round.Height(p) - height) > Tolerances.FlatnessSteps))
        {
            return null;
        }

        Point3 spoke = round.Spoke(points[0]) + round.Spoke(points[1]);
        Point3 bulge = round.OnAxis(height) + (round.RadiusAt(height) / spoke.Length * spoke);
        bool ahead = Point3.Dot(Point3.Cross(round.Spoke(points[0]), round.Spoke(points[1])), round.Axis) > 0;
        return both.All(surface => Math.Abs(surface.Distance(bulge)) <= 2 * Tolerances.FlatnessSteps)
            ? new ArcCurve(round, height, ahead) : null;
    }
}

/// <summary>A straight line.</summary>
internal sealed record LineCurve : BorderCurve;

/// <summary>An arc about a round surface's axis.</summary>
/// <param name="Round">The surface.</param>
/// <param name="Height">Where along its axis.</param>
/// <param name="Ahead">Whether the run goes counter-clockwise about the axis.</param>
internal sealed record ArcCurve(RoundSurface Round, double Height, bool Ahead) : BorderCurve;
