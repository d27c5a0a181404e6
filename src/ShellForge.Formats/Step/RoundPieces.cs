using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Step;

/// <summary>
/// Round surfaces in pieces that can be faces: connected, and well short of a full turn; one facet alone stays flat.
/// </summary>
internal static class RoundPieces
{
    // What a piece leaves open at least, degrees.
    private const double LeastGap = 60;

    /// <summary>The piece of each facet, null for those that stay flat. Facets of one piece have the same one.</summary>
    public static RoundPatch?[] Of(FacetGraph graph, RoundSurface?[] surfaces)
    {
        var pieces = new RoundPatch?[graph.Count];
        bool[] seen = new bool[graph.Count];
        for (int facet = 0; facet < graph.Count; facet++)
        {
            if (surfaces[facet] is not { } surface || seen[facet])
            {
                continue;
            }

            List<int> whole = Connected(graph, facet, other => ReferenceEquals(surfaces[other], surface) && !seen[other]);
            whole.ForEach(f => seen[f] = true);
            if (whole.Count > 1)
            {
                Divide(graph, surface, whole, pieces);
            }
        }

        return pieces;
    }

    private static void Divide(FacetGraph graph, RoundSurface surface, List<int> whole, RoundPatch?[] pieces)
    {
        bool facesOut = Point3.Dot(surface.Normal(graph.Corners(whole[0]).First()), graph.Normals[whole[0]]) > 0;
        double[] around = [.. whole.Select(f => Facing(graph, surface, f)).Order()];
        double gap = around.Select((angle, i) => i == 0 ? angle + 360 - around[^1] : angle - around[i - 1]).Max();
        if (gap >= LeastGap)
        {
            var piece = new RoundPatch(surface, facesOut);
            whole.ForEach(f => pieces[f] = piece);
            return;
        }

        // Halves meet at corners of the ring: one of the first facet, and the one across.
        double start = graph.Corners(whole[0]).Max(p => Past(surface.Around(p).Degrees, Facing(graph, surface, whole[0])));
        start += Facing(graph, surface, whole[0]);
        var halves = whole.ToLookup(f => Angle.FromDegrees(Facing(graph, surface, f) - start).Normalized.Degrees < 180);
        foreach (IGrouping<bool, int> half in halves)
        {
            HashSet<int> open = [.. half];
            foreach (int facet in half)
            {
                if (open.Contains(facet))
                {
                    List<int> piece = Connected(graph, facet, open.Contains);
                    open.ExceptWith(piece);
                    var patch = new RoundPatch(surface, facesOut);
                    piece.ForEach(f => pieces[f] = patch);
                }
            }
        }
    }

    // How far an angle lies past another, -180 to 180.
    private static double Past(double angle, double other) => Angle.FromDegrees(angle - other + 180).Normalized.Degrees - 180;

    private static double Facing(FacetGraph graph, RoundSurface surface, int facet)
    {
        Point3 normal = graph.Normals[facet];
        Point3 point = graph.Corners(facet).First();
        double sign = Point3.Dot(surface.Normal(point), normal) < 0 ? -1 : 1;
        return surface.Around(surface.Origin + (sign * normal)).Degrees;
    }

    private static List<int> Connected(FacetGraph graph, int first, Func<int, bool> belongs)
    {
        var found = new List<int> { first };
        var known = new HashSet<int> { first };
        for (int i = 0; i < found.Count; i++)
        {
            foreach (FacetSide side in graph.Sides(found[i]))
            {
                if (belongs(side.Other) && known.Add(side.Other))
                {
                    found.Add(side.Other);
                }
            }
        }

        return found;
    }
}
