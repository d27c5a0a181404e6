using System.Globalization;
using System.Text;
using ShellForge.Formats.Svg;
using ShellForge.Geometry.Numerics;
using static ShellForge.Formats.Pdf.PdfDocument;

namespace ShellForge.Formats.Pdf;

/// <summary>A page as a sheet to draw on. Areas are filled white, grey, black or not at all; it knows no hatching.</summary>
/// <param name="page">The page.</param>
public sealed class PdfSheet(PdfPage page) : IDrawingSheet
{
    // Capitals of the standard faces are 0.718 of the font size high; drawings count the capitals.
    private const double CapitalShare = 0.718;

    private const double OutlineWidth = 0.5;
    private const double FrameWidth = 0.7;
    private const double ThinWidth = 0.25;

    // A circle is drawn as so many cubic curves; each then lies within a hundred-thousandth of the radius.
    private const int Curves = 8;

    // Distance of a curve's inner points from its ends, of the radius: 4/3 tan of a quarter of its angle, 11.25 degrees.
    private const double Reach = 0.26521648983954400;

    /// <summary>Draws inside of a rectangle only, until <see cref="EndWindow"/>.</summary>
    public void BeginWindow(Box2 window) => page.Add(
        $"q {Points(window.Min.X)} {Points(Height - window.Max.Y)} {Points(window.Size.X)} {Points(window.Size.Y)} re W n\n");

    /// <summary>Ends what <see cref="BeginWindow"/> began.</summary>
    public void EndWindow() => page.Add("Q\n");

    /// <inheritdoc />
    public void Line(Point2 from, Point2 to, Stroke stroke) => Polyline([from, to], stroke);

    /// <inheritdoc />
    public void Polyline(IReadOnlyList<Point2> points, Stroke stroke)
    {
        var path = new StringBuilder();
        Append(path, points);
        Draw(path, stroke, Fill.None);
    }

    /// <inheritdoc />
    public void Area(IEnumerable<IReadOnlyList<Point2>> loops, Stroke stroke, Fill fill)
    {
        var path = new StringBuilder();
        foreach (IReadOnlyList<Point2> loop in loops)
        {
            Append(path, loop);
            path.Append("h\n");
        }

        Draw(path, stroke, fill);
    }

    /// <inheritdoc />
    public void Circle(Point2 centre, double radius, Stroke stroke, Fill fill = Fill.None)
    {
        var path = new StringBuilder($"{At(centre + new Point2(radius, 0))} m\n");
        for (int i = 0; i < Curves; i++)
        {
            var from = Angle.FromDegrees(360.0 / Curves * i);
            var to = Angle.FromDegrees(360.0 / Curves * (i + 1));
            Point2 start = Point2.Polar(radius, from);
            Point2 end = Point2.Polar(radius, to);
            Point2 first = start + (Reach * new Point2(-start.Y, start.X));
            Point2 second = end - (Reach * new Point2(-end.Y, end.X));
            path.Append($"{At(centre + first)} {At(centre + second)} {At(centre + end)} c\n");
        }

        path.Append("h\n");
        Draw(path, stroke, fill);
    }

    /// <inheritdoc />
    public void Lettering(Point2 at, string text, double height, TextAnchor anchor, Angle turn = default, bool bold = false)
    {
        PdfFont font = bold ? PdfFont.Bold : PdfFont.Plain;
        double size = height / CapitalShare;
        double back = anchor switch { TextAnchor.Middle => 0.5, TextAnchor.End => 1, _ => 0 } * PdfFontWidths.Of(text, font, size);
        Point2 start = at - (back * new Point2(turn.Cos, -turn.Sin));
        page.Add($"0 g BT /F{(int)font} {Points(size)} Tf {Share(turn.Cos)} {Share(turn.Sin)} {Share(-turn.Sin)} {Share(turn.Cos)} "
            + $"{At(start)} Tm {Literal(text)} Tj ET\n");
    }

    private void Draw(StringBuilder path, Stroke stroke, Fill fill)
    {
        string? shade = fill switch
        {
            Fill.None => null,
            Fill.Blank => "1 g",
            Fill.Grey => "0.867 g",
            Fill.Solid => "0 g",
            _ => throw new ArgumentOutOfRangeException(nameof(fill), fill, "A page knows no hatching."),
        };
        string paint = (shade, stroke) switch
        {
            (null, Stroke.None) => "n",
            (null, _) => "S",
            (_, Stroke.None) => "f*",
            _ => "B*",
        };
        page.Add($"{shade ?? ""} 0 G {Points(WidthOf(stroke))} w [{Dashes(stroke)}] 0 d\n{path}{paint}\n");
    }

    private static void Append(StringBuilder path, IReadOnlyList<Point2> points)
    {
        for (int i = 0; i < points.Count; i++)
        {
            path.Append($"{At(points[i])} {(i == 0 ? 'm' : 'l')}\n");
        }
    }

    private static double WidthOf(Stroke stroke) => stroke switch
    {
        Stroke.Outline => OutlineWidth,
        Stroke.Frame => FrameWidth,
        _ => ThinWidth,
    };

    private static string Dashes(Stroke stroke) => stroke switch
    {
        Stroke.Hidden => $"{Points(3)} {Points(0.75)}",
        Stroke.Centre => $"{Points(6)} {Points(0.75)} {Points(0.125)} {Points(0.75)}",
        Stroke.Phantom => $"{Points(6)} {Points(0.75)} {Points(0.125)} {Points(0.75)} {Points(0.125)} {Points(0.75)}",
        _ => "",
    };

    private static string Share(double value) => value.ToString("0.######", CultureInfo.InvariantCulture);

    private static string At(Point2 point) => $"{Points(point.X)} {Points(Height - point.Y)}";
}
