using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Checks.Gauges;

/// <summary>Something in a layer that is too fine for its line.</summary>
/// <param name="Width">Its width, mm: that of the rectangle with its area and outline.</param>
/// <param name="Length">Its length, mm.</param>
/// <param name="At">A point in it.</param>
/// <param name="Area">Its area, mm2.</param>
internal readonly record struct FineFeature(double Width, double Length, Point2 At, double Area);

/// <summary>Finds what a line of a given width cannot draw, by opening: shrink by half a line and grow again.</summary>
internal static class ThinFeatures
{
    /// <summary>Growing back a little further than the shrink takes what corners lose out of the difference, mm.</summary>
    private const double CornerSlack = 0.02;

    /// <summary>Widths that a place is cut out with on every side.</summary>
    private const double CutMargin = 5;

    /// <summary>An island smaller than this is a speck that nobody misses, mm2: a tenth of a line's square.</summary>
    private const double Speck = 0.02;

    /// <summary>What opening takes off a corner of 20 degrees or more is no longer than this many widths.</summary>
    private const double CornerReach = 3;

    /// <summary>
    /// What is lost of a larger piece is missed from this many squares of the width on: the edge of less is as rough as any print's.
    /// </summary>
    private const double MissedArea = 1;

    /// <summary>
    /// Parts of the region narrower than a width. Corners, which every nozzle rounds, are left out: what is lost there is shorter
    /// than three widths unless it is sharper than 20 degrees, and slivers of less than the width's square; a lone island counts whatever
    /// its length unless it is a speck.
    /// </summary>
    public static ImmutableArray<FineFeature> Narrower(Region region, double width)
    {
        ImmutableArray<FineFeature>.Builder found = ImmutableArray.CreateBuilder<FineFeature>();
        foreach (Region part in region.Parts)
        {
            Region core = part.Grown(-width / 2);
            if (core.IsEmpty)
            {
                if (part.Area >= Speck)
                {
                    found.Add(Measured(part));
                }

                continue;
            }

            Region lost = part.Without(core.Grown((width / 2) + CornerSlack));
            foreach (Region piece in lost.Parts)
            {
                FineFeature feature = Measured(piece);
                if (feature.Length > CornerReach * width && feature.Area >= MissedArea * width * width)
                {
                    found.Add(feature);
                }
            }
        }

        return found.ToImmutable();
    }

    /// <summary>As <see cref="Narrower(Region, double)"/>, looking only where a look at the outline has found something narrow.</summary>
    /// <param name="region">The section.</param>
    /// <param name="width">Width, mm; no more than the places were looked for with.</param>
    /// <param name="places">From <see cref="NarrowPlaces.Of"/>.</param>
    public static IEnumerable<FineFeature> Narrower(Region region, double width, ImmutableArray<Box2> places) =>
        Within(region, width, places, piece => Narrower(piece, width));

    /// <summary>As <see cref="Gaps(Region, double)"/>, looking only where a look at the outline has found something narrow.</summary>
    public static IEnumerable<FineFeature> Gaps(Region region, double width, ImmutableArray<Box2> places) =>
        Within(region, width, places, piece => Gaps(piece, width));

    // A place is cut out with a margin; what the cut itself makes thin lies in the margin and is left out.
    private static IEnumerable<FineFeature> Within(
        Region region, double width, ImmutableArray<Box2> places, Func<Region, ImmutableArray<FineFeature>> look)
    {
        foreach (Box2 place in places)
        {
            Box2 cut = place.Grown(CutMargin * width);
            Region piece = region.Intersect(Region.Rectangle(cut.Min, cut.Max));
            Box2 inside = place.Grown(width);
            foreach (FineFeature feature in look(piece).Where(feature => inside.Touches(new Box2(feature.At, feature.At))))
            {
                yield return feature;
            }
        }
    }

    /// <summary>Gaps of the region narrower than a width, by closing.</summary>
    public static ImmutableArray<FineFeature> Gaps(Region region, double width)
    {
        Region closed = region.Grown(width / 2).Grown(-((width / 2) + CornerSlack));
        return [.. closed.Without(region).Parts.Select(Measured).Where(feature => feature.Length > CornerReach * width)];
    }

    private static FineFeature Measured(Region piece)
    {
        double length = piece.Perimeter / 2;
        double difference = SidesDifference(piece);
        double width = difference > 0 ? (length - difference) / 2 : 2 * piece.Area / length;
        return new FineFeature(width, length, InnerPoint(piece), piece.Area);
    }

    /// <summary>
    /// By how much the long side of the rectangle that has a region's area and outline is longer than the short one, mm; 0 for what is
    /// rounder than any rectangle. Together both sides are half the outline.
    /// </summary>
    internal static double SidesDifference(Region piece)
    {
        double both = piece.Perimeter / 2;
        return Math.Sqrt(Math.Max(0, (both * both) - (4 * piece.Area)));
    }

    /// <summary>A point of the region, near its middle: the middle of the longest stretch of the level line through it.</summary>
    internal static Point2 InnerPoint(Region region)
    {
        Box2 bounds = region.Bounds;
        if (region.Contains(bounds.Centre))
        {
            return bounds.Centre;
        }

        double y = bounds.Centre.Y;
        double[] crossings = ScanLines.Crossings(region.Loops, y);
        (double Length, Point2 At) best = (-1, region.Loops[0][0]);
        for (int i = 0; i + 1 < crossings.Length; i += 2)
        {
            if (crossings[i + 1] - crossings[i] > best.Length)
            {
                best = (crossings[i + 1] - crossings[i], new Point2((crossings[i] + crossings[i + 1]) / 2, y));
            }
        }

        return best.At;
    }
}
