using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Step;

/// <summary>A part of a round surface that is one face.</summary>
internal sealed record RoundPiece(RoundSurface Surface, int Number);

/// <summary>Parts round groups so that no face meets itself along a seam.</summary>
internal static class RoundPieces
{
    // A row of chords stands for an arc; one or two have as many edges flat.
    private const int Fewest = 2;

    // A face that comes round nearly to itself has no place for a seam either, degrees.
    private const double LeastGap = 30;

    /// <summary>The piece of each facet; null for flat ones.</summary>
    public static RoundPiece?[] Of(HalfEdges edges, int[] facets, List<RoundGroup> groups)
    {
        Point3[] normals = [.. CoplanarFaces.Normals(edges, facets)];
        var pieces = new RoundPiece?[normals.Length];
        foreach (RoundGroup group in groups.Where(group => group.Facets.Count >= Fewest))
        {
            double Towards(int facet) => Angle.Of(normals[facet].XY).Normalized.Degrees;
            double[] around = [.. group.Facets.Select(Towards).Order()];
            double widest = Enumerable.Range(0, around.Length)
                .Max(i => i == 0 ? around[0] + 360 - around[^1] : around[i] - around[i - 1]);
            const double half = 180;
            bool closed = widest < (2 * group.TurnDegrees) + LeastGap;
            RoundPiece[] halves = [new(group.Surface, 0), new(group.Surface, 1)];
            foreach (int facet in group.Facets)
            {
                // Between two chords wherever rings begin, at a rib or in the middle of a chord.
                bool second = closed && Angle.FromDegrees(Towards(facet) + (0.3 * group.TurnDegrees)).Normalized.Degrees >= half;
                pieces[facet] = halves[second ? 1 : 0];
            }
        }

        return pieces;
    }
}
