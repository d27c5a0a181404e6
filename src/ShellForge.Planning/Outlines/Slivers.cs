using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Planning.Outlines;

/// <summary>
/// What a cut leaves standing that is narrower than a line of plastic: a slicer drops it without a word. A plan takes it away with the cut,
/// so that the part is what is printed.
/// </summary>
internal static class Slivers
{
    // A cut is looked at with so much round it, mm: beyond, what it leaves is as wide as before.
    private const double Around = 3;

    // Growing back a little further than the shrink takes what corners lose out of the difference, mm.
    private const double CornerSlack = 0.02;

    // A sliver goes with this much more on every side, mm: its outline and the region's, rounded apart, would leave hairs.
    private const double Hair = 0.005;

    // What is lost at corners is no longer than so many widths.
    private const double CornerReach = 1.5;

    /// <summary>The slivers of what some cuts leave of a region, each with a hair round it; empty where there are none.</summary>
    /// <param name="left">What is left.</param>
    /// <param name="cuts">What was cut out of it.</param>
    /// <param name="line">Width of a line, mm.</param>
    public static Region Beside(Region left, IEnumerable<Region> cuts, double line)
    {
        Region[] near =
            [.. cuts.Where(cut => !left.IsEmpty && !cut.IsEmpty && cut.Bounds.Touches(left.Bounds) && left.Distance(cut) < Hair)];
        return Region.Union(near.SelectMany(cut => Beside(left, cut, line)));
    }

    private static IEnumerable<Region> Beside(Region left, Region cut, double line)
    {
        Box2 look = cut.Bounds.Grown(Around);
        foreach (Region part in left.Intersect(Region.Rectangle(look.Min, look.Max)).Parts)
        {
            Region core = part.Offset(-line / 2);
            Region lost = core.IsEmpty ? part : part.Less(core.Offset((line / 2) + CornerSlack));
            foreach (Region sliver in lost.Parts.Where(piece => piece.Perimeter / 2 > CornerReach * line && piece.Distance(cut) < Hair))
            {
                yield return sliver.Offset(Hair);
            }
        }
    }
}
