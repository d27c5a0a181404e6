using System.Collections.Immutable;

namespace ShellForge.Physics.Heat;

/// <summary>How a housing is divided into rings: finely at the board's edges, where heat turns into the walls, evenly between.</summary>
public static class SectionRings
{
    // The first ring from an edge and how much wider each further one may be, m.
    private const double First = 0.001;
    private const double Growth = 1.8;

    // The widest ring as a share of what is divided: at least so many rings lie across it.
    private const int Across = 8;

    /// <summary>Rings from the axis or the bore's wall to the outer wall.</summary>
    /// <param name="from">Radius of the bore's wall on the side of the board; 0 without an open bore, m.</param>
    /// <param name="boardInner">The board's inner radius; 0 for a disc, m.</param>
    /// <param name="boardOuter">The board's outer radius, m.</param>
    /// <param name="to">Radius of the outer wall's inner face, m.</param>
    public static ImmutableArray<SectionRing> Of(double from, double boardInner, double boardOuter, double to)
    {
        var rings = ImmutableArray.CreateBuilder<SectionRing>();
        AddPart(rings, from, Math.Max(from, boardInner), false);
        AddPart(rings, Math.Max(from, boardInner), boardOuter, true);
        AddPart(rings, boardOuter, to, false);
        return rings.ToImmutable();
    }

    private static void AddPart(ImmutableArray<SectionRing>.Builder rings, double from, double to, bool board)
    {
        double[] widths = Widths(to - from);
        double at = from;
        for (int i = 0; i < widths.Length; i++)
        {
            double next = i + 1 == widths.Length ? to : at + widths[i];
            rings.Add(new SectionRing(at, next) { Board = board });
            at = next;
        }
    }

    private static double[] Widths(double span)
    {
        if (span <= First)
        {
            return span > 0 ? [span] : [];
        }

        // From both edges inward, each wider than the one before it.
        var half = new List<double>();
        double left = span / 2;
        double width = First;
        while (left > width)
        {
            half.Add(width);
            left -= width;
            width = Math.Min(width * Growth, Math.Max(First, span / Across));
        }

        double[] mirrored = [.. half, 2 * left, .. Enumerable.Reverse(half)];
        return mirrored;
    }
}
