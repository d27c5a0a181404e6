using ShellForge.Geometry.Numerics;

namespace ShellForge.Import.Merging;

/// <summary>Looks for the origin a placement list was written with: the outline's corners, its middle, or where it fits best.</summary>
internal static class OriginEvidence
{
    /// <summary>Share of the points that tells one reading from another.</summary>
    private const double Most = 0.9;

    /// <summary>Whether the points lie beside the board as written, and on it with y counted the other way, as on a screen.</summary>
    public static bool CountsDown(List<Point2> points, ImportedOutline outline)
    {
        int asWritten = points.Count(outline.Outer.Contains);
        int turned = points.Count(p => outline.Outer.Contains(new Point2(p.X, -p.Y)));
        return asWritten == 0 && turned > Most * points.Count;
    }

    /// <summary>
    /// A shift that puts nearly all points onto the board; null when none of the usual origins does. A shift never turns the
    /// points over: what lies on the board only with y counted down would be mirrored by a shift along y.
    /// </summary>
    public static Point2? Offer(List<Point2> points, ImportedOutline outline)
    {
        Box2 board = outline.Outer.Bounds;
        Box2 parts = Box2.Of(points);
        return Best(points, outline, [.. Corners(outline), board.Min - parts.Min, board.Centre - parts.Centre]);
    }

    /// <summary>The same from the outline alone: a list written with one of its corners or its middle as origin.</summary>
    public static Point2? Named(List<Point2> points, ImportedOutline outline) => Best(points, outline, Corners(outline));

    private static Point2[] Corners(ImportedOutline outline)
    {
        Box2 board = outline.Outer.Bounds;
        return [board.Min, new Point2(board.Min.X, board.Max.Y), board.Centre, outline.Centre];
    }

    private static Point2? Best(List<Point2> points, ImportedOutline outline, Point2[] shifts)
    {
        Point2? best = null;
        double bestShare = Most;
        foreach (Point2 shift in shifts)
        {
            double share = points.Count(p => outline.Outer.Contains(p + shift)) / (double)points.Count;
            if (share > bestShare)
            {
                (best, bestShare) = (shift, share);
            }
        }

        return best;
    }
}
