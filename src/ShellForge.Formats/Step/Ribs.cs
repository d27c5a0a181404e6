using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Step;

/// <summary>An edge between two steep facets that turn a little about it, as neighbouring chords of a round wall do.</summary>
/// <param name="Beyond">The facet on the other side.</param>
/// <param name="Bottom">Its lower end, in lattice steps.</param>
/// <param name="Top">Its upper end.</param>
/// <param name="OnRight">Whether it bounds the facet on the right, seen from outside.</param>
internal sealed record Rib(int Beyond, Point3 Bottom, Point3 Top, bool OnRight)
{
    public double Length => Point3.Distance(Bottom, Top);

    /// <summary>Where the line of the rib passes a height.</summary>
    public Point2 At(double z)
    {
        double share = (z - Bottom.Z) / (Top.Z - Bottom.Z);
        return Bottom.XY + (share * (Top.XY - Bottom.XY));
    }
}

/// <summary>The ribs of each facet.</summary>
internal static class Ribs
{
    /// <summary>Small roundings turn fast, as long as their chords stray from the arc by no more than the chord error.</summary>
    private const double MostTurnDegrees = 50;

    // A shorter one says nothing about where it points: its ends were rounded.
    private const double ShortestSteps = 64;

    // Neighbours of one cone lean alike: rounding turns a facet of a tenth of a millimetre by this much.
    private const double LeanSpread = 2e-3;

    /// <summary>The ribs of each facet, in the order of its loops.</summary>
    /// <param name="edges">The mesh.</param>
    /// <param name="borders">The loops of each facet.</param>
    /// <param name="normals">The outward direction of each facet, of length one.</param>
    public static List<Rib>[] Of(HalfEdges edges, List<List<BorderRun>>[] borders, Point3[] normals)
    {
        double leastCosine = Angle.FromDegrees(MostTurnDegrees).Cos;
        return [.. borders.Select((loops, facet) => Math.Abs(normals[facet].Z) > 1 - LeanSpread
            ? []
            : loops.SelectMany(loop => loop)
                .Where(run => Math.Abs(normals[run.Other].Z - normals[facet].Z) <= LeanSpread
                    && Point3.Dot(normals[run.Other], normals[facet]) >= leastCosine)
                .Select(run => Along(edges, run)).OfType<Rib>().ToList())];
    }

    private static Rib? Along(HalfEdges edges, BorderRun run)
    {
        Point3 from = edges.Start(run.Edges[0]), to = edges.At(edges.To(run.Edges[^1]));
        double length = Point3.Distance(from, to);
        return length < ShortestSteps || Math.Abs(to.Z - from.Z) < length / 8
            ? null
            : to.Z > from.Z ? new Rib(run.Other, from, to, true) : new Rib(run.Other, to, from, false);
    }
}
