using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Ecad.Merging;

/// <summary>Looks for the origin a placement list was written with: the outline's corners, its middle, or where it fits best.</summary>
internal static class OriginEvidence
{
    /// <summary>A shift that puts nearly all points onto the board; null when none of the usual origins does.</summary>
    public static Point2? Offer(List<Point2> points, ImportedOutline outline)
    {
        Box2 board = outline.Outer.Bounds;
        Box2 parts = Box2.Of(points);
        Point2[] shifts =
        [
            board.Min,
            new Point2(board.Min.X, board.Max.Y),
            board.Centre,
            outline.Centre,
            new Point2(0, board.Min.Y + board.Max.Y),
            board.Min - parts.Min,
            board.Centre - parts.Centre,
        ];
        Point2? best = null;
        double bestShare = 0.9;
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
