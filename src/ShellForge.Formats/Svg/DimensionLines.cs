using System.Globalization;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Svg;

/// <summary>
/// Dimension lines by drawing-office habit (ISO 129-1): narrow lines, closed filled arrows of 15 degrees, extension lines that
/// leave a gap at the outline and overshoot the dimension line, values above the line and readable from below or from the
/// right. All points are sheet points.
/// </summary>
public static class DimensionLines
{
    /// <summary>Height of dimension text, mm.</summary>
    public const double TextHeight = 2.5;

    private const double ArrowLength = 2.5;
    private const double ExtensionGap = 0.8;
    private const double ExtensionOvershoot = 1.6;
    private const double TextGap = 0.8;

    // Half the base of an arrow of 15 degrees over its length: tan 7.5 degrees.
    private const double ArrowHalfWidth = ArrowLength * 0.13165;

    /// <summary>Width that a line of dimension text takes, mm.</summary>
    public static double WidthOf(string text) => SvgSheet.WidthOf(text, TextHeight);

    /// <summary>A length as it is written on drawings: at most two decimals, no trailing zeros.</summary>
    public static string Value(double millimetres) => millimetres.ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>A horizontal distance between two points, its line at a height of the sheet.</summary>
    public static void Horizontal(IDrawingSheet sheet, Point2 a, Point2 b, double lineY, string text)
    {
        Point2 left = a.X <= b.X ? a : b;
        Point2 right = a.X <= b.X ? b : a;
        Extension(sheet, left, new Point2(left.X, lineY));
        Extension(sheet, right, new Point2(right.X, lineY));
        Between(sheet, new Point2(left.X, lineY), new Point2(right.X, lineY), text, Angle.Zero);
    }

    /// <summary>A vertical distance between two points, its line at a place across the sheet.</summary>
    public static void Vertical(IDrawingSheet sheet, Point2 a, Point2 b, double lineX, string text)
    {
        Point2 low = a.Y >= b.Y ? a : b;
        Point2 high = a.Y >= b.Y ? b : a;
        Extension(sheet, low, new Point2(lineX, low.Y));
        Extension(sheet, high, new Point2(lineX, high.Y));
        Between(sheet, new Point2(lineX, low.Y), new Point2(lineX, high.Y), text, Angle.FromDegrees(90));
    }

    /// <summary>A leader from an arrow on an edge to a shelf that carries text.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="tip">Where the arrow touches.</param>
    /// <param name="elbow">Where the shelf begins.</param>
    /// <param name="text">The text on the shelf.</param>
    public static void Leader(IDrawingSheet sheet, Point2 tip, Point2 elbow, string text)
    {
        bool toRight = elbow.X >= tip.X;
        double width = WidthOf(text) + TextGap;
        Point2 end = new(elbow.X + (toRight ? width : -width), elbow.Y);
        sheet.Polyline([tip, elbow, end], Stroke.Thin);
        Arrow(sheet, tip, elbow - tip);
        sheet.Lettering(
            new Point2(elbow.X + (toRight ? TextGap : -TextGap), elbow.Y - TextGap), text, TextHeight,
            toRight ? TextAnchor.Start : TextAnchor.End);
    }

    /// <summary>An arrow head.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="tip">Its point.</param>
    /// <param name="back">Direction from the point to the tail; any length but zero.</param>
    public static void Arrow(IDrawingSheet sheet, Point2 tip, Point2 back)
    {
        Point2 along = (1 / back.Length) * back;
        Point2 across = new(-along.Y, along.X);
        Point2 foot = tip + (ArrowLength * along);
        sheet.Area([[tip, foot + (ArrowHalfWidth * across), foot - (ArrowHalfWidth * across)]], Stroke.None, Fill.Solid);
    }

    private static void Between(IDrawingSheet sheet, Point2 from, Point2 to, string text, Angle turn)
    {
        double length = (to - from).Length;
        Point2 along = length == 0 ? new Point2(1, 0) : (1 / length) * (to - from);
        double width = WidthOf(text);
        Point2 above = turn.Degrees == 0 ? new Point2(0, -TextGap) : new Point2(-TextGap, 0);
        if (length >= width + (2 * ArrowLength))
        {
            sheet.Line(from, to, Stroke.Thin);
            Arrow(sheet, from, along);
            Arrow(sheet, to, -1 * along);
            sheet.Lettering((0.5 * (from + to)) + above, text, TextHeight, TextAnchor.Middle, turn);
            return;
        }

        // Too short for its value: arrows from outside, and the value beyond the second arrow.
        Point2 end = to + ((ArrowLength + TextGap + width) * along);
        sheet.Line(from - (2 * ArrowLength * along), end, Stroke.Thin);
        Arrow(sheet, from, -1 * along);
        Arrow(sheet, to, along);
        sheet.Lettering(to + ((ArrowLength + TextGap) * along) + above, text, TextHeight, TextAnchor.Start, turn);
    }

    private static void Extension(IDrawingSheet sheet, Point2 from, Point2 to)
    {
        double length = (to - from).Length;
        if (length <= ExtensionGap)
        {
            return;
        }

        Point2 along = (1 / length) * (to - from);
        sheet.Line(from + (ExtensionGap * along), to + (ExtensionOvershoot * along), Stroke.Thin);
    }
}
