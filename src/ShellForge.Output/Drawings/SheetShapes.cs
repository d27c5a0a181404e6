using ShellForge.Formats.Svg;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Output.Drawings;

/// <summary>Shapes that several drawings put on a sheet.</summary>
internal static class SheetShapes
{
    /// <summary>Regions as one area.</summary>
    /// <param name="sheet">What is drawn on.</param>
    /// <param name="regions">The regions.</param>
    /// <param name="at">Where a place of theirs lies on the sheet.</param>
    /// <param name="stroke">Line of the outlines.</param>
    /// <param name="fill">What is between them.</param>
    public static void Area(
        this IDrawingSheet sheet, IEnumerable<Region> regions, Func<Point2, Point2> at, Stroke stroke, Fill fill) =>
        sheet.Area(
            regions.SelectMany(region => region.Loops).Select(loop => (IReadOnlyList<Point2>)[.. loop.Select(at)]), stroke, fill);

    /// <summary>An upright cross.</summary>
    /// <param name="sheet">What is drawn on.</param>
    /// <param name="at">Its middle.</param>
    /// <param name="reach">Length of its arms, mm.</param>
    /// <param name="stroke">Its lines.</param>
    public static void Cross(this IDrawingSheet sheet, Point2 at, double reach, Stroke stroke)
    {
        sheet.Line(at - new Point2(reach, 0), at + new Point2(reach, 0), stroke);
        sheet.Line(at - new Point2(0, reach), at + new Point2(0, reach), stroke);
    }
}
