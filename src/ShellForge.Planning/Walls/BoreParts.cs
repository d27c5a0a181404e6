using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Outlines;

namespace ShellForge.Planning.Walls;

/// <summary>Parts that reach over a board's bore, where an open bore would have its wall.</summary>
internal static class BoreParts
{
    // What stands out farther over the edge than this, mm, is no corner of something that sits at it.
    private const double CornerOut = 0.5;

    // A connector may stand out into the bore by this, mm: its plug comes from there.
    private const double MouthOut = 4;

    /// <summary>The part that reaches farthest over the bore; null where none does. A connector that faces into the bore may.</summary>
    public static (string Ref, double Reach, Point2 At)? Over(CircuitBoard board)
    {
        if (board.Outline.BoreRadius <= 0)
        {
            return null;
        }

        var rim = new Rim(board.Outline);
        return board.Parts
            .Select(part => (part.Ref, Reach: Math.Round(Reach(part, rim, board.Outline.BoreRadius), 2), part.At,
                Allowed: part.Mouth is { PastEdge: >= 0 } ? MouthOut : CornerOut))
            .Where(each => each.Reach > each.Allowed)
            .OrderByDescending(each => each.Reach)
            .Select(each => ((string Ref, double Reach, Point2 At)?)(each.Ref, each.Reach, each.At))
            .FirstOrDefault();
    }

    private static double Reach(BoardPart part, Rim rim, double boreRadius)
    {
        Region body = PartEnvelope.OutlineOf(part);
        return body.Contains(Point2.Origin) ? boreRadius : -rim.OutsideBore(body);
    }
}
