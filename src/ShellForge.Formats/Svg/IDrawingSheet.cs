using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Svg;

/// <summary>
/// What a drawing is drawn on, whatever kind of file it becomes: places are mm on the sheet, y down. What is drawn later lies above.
/// </summary>
public interface IDrawingSheet
{
    /// <summary>A straight line.</summary>
    void Line(Point2 from, Point2 to, Stroke stroke);

    /// <summary>A circle.</summary>
    void Circle(Point2 centre, double radius, Stroke stroke, Fill fill = Fill.None);

    /// <summary>An area bounded by closed loops; a loop inside another is a hole.</summary>
    void Area(IEnumerable<IReadOnlyList<Point2>> loops, Stroke stroke, Fill fill);

    /// <summary>A line through several points.</summary>
    void Polyline(IReadOnlyList<Point2> points, Stroke stroke);

    /// <summary>A line of text.</summary>
    /// <param name="at">Its point on the base line.</param>
    /// <param name="text">The text.</param>
    /// <param name="height">Nominal height of letters, mm.</param>
    /// <param name="anchor">Where it stands relative to the point.</param>
    /// <param name="turn">Turn, counter-clockwise as seen.</param>
    /// <param name="bold">Whether it stands out.</param>
    void Lettering(Point2 at, string text, double height, TextAnchor anchor, Angle turn = default, bool bold = false);
}
