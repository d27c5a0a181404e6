using ShellForge.Geometry.Numerics;
using ShellForge.Import.Files;

namespace ShellForge.Import.Merging;

/// <summary>How bottom coordinates are written.</summary>
internal enum MirrorVerdict
{
    /// <summary>As seen from the top.</summary>
    Straight,

    /// <summary>With x mirrored at the origin.</summary>
    Mirrored,

    /// <summary>Both readings are possible.</summary>
    Unclear,
}

/// <summary>
/// Tells mirrored bottom coordinates from straight ones: by the outline, by holes under parts, by the other side's extent.
/// </summary>
internal static class MirrorEvidence
{
    private const double Most = 0.9;

    public static MirrorVerdict Of(
        List<ImportedPart> bottom, List<ImportedPart> top, ImportedOutline? outline, IReadOnlyList<ImportedHole> holes)
    {
        List<Point2> straight = [.. bottom.Select(p => p.At)];
        List<Point2> mirrored = [.. straight.Select(p => new Point2(-p.X, p.Y))];
        if (outline is null)
        {
            return ByOtherSide(straight, mirrored, [.. top.Select(p => p.At)]);
        }

        double asWritten = Share(straight, outline);
        double turned = Share(mirrored, outline);
        if (asWritten >= Most && turned < Most)
        {
            return MirrorVerdict.Straight;
        }

        if (turned >= Most && asWritten < 0.5)
        {
            return MirrorVerdict.Mirrored;
        }

        if (turned < 0.5)
        {
            return MirrorVerdict.Straight;
        }

        // A board with its origin in the middle: parts with leads stand on their holes.
        int onHoles = OnHoles(straight, holes);
        int onHolesTurned = OnHoles(mirrored, holes);
        if (onHoles != onHolesTurned && Math.Max(onHoles, onHolesTurned) >= 2 * Math.Max(1, Math.Min(onHoles, onHolesTurned)))
        {
            return onHoles > onHolesTurned ? MirrorVerdict.Straight : MirrorVerdict.Mirrored;
        }

        bool isSymmetric = straight.TrueForAll(p => mirrored.Exists(q => Point2.Distance(p, q) <= EcadTolerances.SameOpening));
        return isSymmetric ? MirrorVerdict.Straight : MirrorVerdict.Unclear;
    }

    private static MirrorVerdict ByOtherSide(List<Point2> straight, List<Point2> mirrored, List<Point2> top)
    {
        if (top.Count < 3)
        {
            bool allNegative = straight.TrueForAll(p => p.X < 0) && straight.Exists(p => p.Y > 0);
            return allNegative && top.Count == 0 ? MirrorVerdict.Unclear : MirrorVerdict.Straight;
        }

        // One board: both sides share its extent.
        Box2 box = Box2.Of(top);
        double margin = 0.2 * box.Size.Length;
        double asWritten = Within(straight, box, margin);
        double turned = Within(mirrored, box, margin);
        return turned >= Most && asWritten < 0.5 ? MirrorVerdict.Mirrored : MirrorVerdict.Straight;
    }

    private static double Within(List<Point2> points, Box2 box, double margin) =>
        points.Count(p => p.X >= box.Min.X - margin && p.X <= box.Max.X + margin && p.Y >= box.Min.Y - margin && p.Y <= box.Max.Y + margin)
        / (double)points.Count;

    private static double Share(List<Point2> points, ImportedOutline outline) =>
        points.Count(
            p => outline.Outer.Contains(p) || outline.Outer.Distance(p, EcadTolerances.InsideMargin) < EcadTolerances.InsideMargin)
                / (double)points.Count;

    private static int OnHoles(List<Point2> points, IReadOnlyList<ImportedHole> holes)
    {
        // Vias are everywhere; leads and screws are not.
        List<Point2> leads = [.. holes.Where(h => h.Kind is not HoleKind.Via).Select(h => h.At).Take(2000)];
        return points.Take(500).Count(p => leads.Exists(h => Point2.Distance(h, p) <= EcadTolerances.SameOpening));
    }
}
