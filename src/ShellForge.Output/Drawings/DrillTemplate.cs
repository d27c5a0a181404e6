using ShellForge.Checks.Gauges;
using ShellForge.Formats.Svg;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Plan;

namespace ShellForge.Output.Drawings;

/// <summary>
/// A sheet to tape to the wall: the holes of a mount at their true size, with a level line, the outline of the housing, and a bar to hold a
/// ruler against, since printers like to fit pages to their paper.
/// </summary>
public static class DrillTemplate
{
    /// <summary>Name of its file.</summary>
    public const string FileName = "drill-template.svg";

    private const double Margin = 12;

    // Many printers leave as much of the paper white.
    private const double Unprinted = 10;
    private const double Foot = 30;
    private const double Bar = 100;
    private const double Cross = 8;

    // Holes nearer than this share one text.
    private const double TextsApart = 60;

    // ISO 216: the smallest sheet on which the holes fit, upright or not. The last one takes what is larger, and says so by its size.
    private static readonly (double Width, double Height)[] Sheets = [(210, 297), (297, 210), (297, 420), (420, 297)];

    /// <summary>The template; null where nothing is drilled.</summary>
    public static SvgSheet? Of(HousingUnderCheck housing)
    {
        if (housing.Plan.Mount?.Drilling is not { } drilling)
        {
            return null;
        }

        Box2 all = Extent(housing, drilling);
        Box2 least = Box2.Of(drilling.Holes.Select(hole => Upright(hole, housing)));
        (double width, double height) = Sheets.FirstOrDefault(sheet => Fits(all, sheet));
        if (width == 0)
        {
            (width, height) = Sheets.FirstOrDefault(sheet => Fits(least, sheet));
        }

        if (width == 0)
        {
            (width, height) = (Math.Ceiling(least.Size.X + (2 * (Margin + Cross))),
                Math.Ceiling(Math.Max(least.Size.Y, Bar) + Foot + (2 * Margin)));
        }

        var svg = new SvgSheet(width, height, $"{housing.Board.Name}: drill template");
        Box2 shown = Fits(all, (width, height)) ? all : least;
        var middle = new Point2(width / 2, (height - Foot) / 2);
        Draw(svg, housing, drilling, p => new Point2(middle.X + (p.X - shown.Centre.X), middle.Y - (p.Y - shown.Centre.Y)),
            (Unprinted, width - Unprinted));
        DrawFoot(svg, housing.Board.Name, width, height);
        return svg;
    }

    /// <summary>What is drawn lies in this box, up in use upward, mm.</summary>
    internal static Box2 Extent(HousingUnderCheck housing, DrillPlan drilling)
    {
        Region outline = Outline(housing);
        return Box2.Of([.. drilling.Holes.Select(hole => Upright(hole, housing)), outline.Bounds.Min, outline.Bounds.Max]);
    }

    /// <summary>Holes, outline, level line and cable.</summary>
    /// <param name="sheet">What is drawn on.</param>
    /// <param name="housing">The housing.</param>
    /// <param name="drilling">What is drilled.</param>
    /// <param name="at">Where a place of the housing, up in use upward, lies on the sheet.</param>
    /// <param name="level">Where the level line begins and ends, x on the sheet.</param>
    internal static void Draw(
        IDrawingSheet sheet, HousingUnderCheck housing, DrillPlan drilling, Func<Point2, Point2> at, (double From, double To) level)
    {
        // Seen as it is taped up: up in use is up on the sheet.
        sheet.Area([Outline(housing)], at, Stroke.Phantom, Fill.None);
        DrawHoles(sheet, [.. drilling.Holes.Select(hole => at(Upright(hole, housing)))], at(Point2.Origin), drilling.Fastener, level);
        foreach (SurfaceHole cable in housing.Plan.CableExits.Select(exit => exit.ThroughSurface).OfType<SurfaceHole>())
        {
            Point2 through = at(Upright(cable.At, housing));
            sheet.Circle(through, cable.Diameter / 2, Stroke.Outline);
            sheet.Lettering(through + new Point2(0, -0.5), "cable", 2.5, TextAnchor.Middle);
            sheet.Lettering(through + new Point2(0, 3), $"\u00D8{DimensionLines.Value(cable.Diameter)}", 2.5, TextAnchor.Middle);
        }

        Point2 middle = at(Point2.Origin);
        sheet.Cross(middle, Cross, Stroke.Centre);
        sheet.Lettering(middle + new Point2(3, 6), "middle of the housing", 2.5, TextAnchor.Start);
    }

    private static Point2 Upright(Point2 place, HousingUnderCheck housing) => place.Turned(housing.Board.Upright);

    private static Region Outline(HousingUnderCheck housing) =>
        housing.Plan.Shell.Footprint.Filled().Turned(housing.Board.Upright);

    private static bool Fits(Box2 box, (double Width, double Height) sheet) =>
        box.Size.X + (2 * Margin) <= sheet.Width && box.Size.Y + (2 * Margin) + Foot <= sheet.Height;

    private static void DrawHoles(
        IDrawingSheet svg, Point2[] holes, Point2 centre, string fastener, (double From, double To) level)
    {
        bool close = holes.Length > 1 && Point2.Distance(holes[0], holes[^1]) < TextsApart;
        if (close)
        {
            svg.Lettering(0.5 * (holes[0] + holes[^1]) - new Point2(0, Cross + 1), $"{holes.Length}x {fastener}", 2.5, TextAnchor.Middle);
        }

        foreach (Point2 hole in holes)
        {
            svg.Circle(hole, 2, Stroke.Outline);
            svg.Cross(hole, Cross, Stroke.Thin);

            if (close)
            {
                continue;
            }

            // Towards the middle, clear of the housing's outline.
            double middle = (level.From + level.To) / 2;
            bool left = hole.X < middle - Cross;
            bool right = hole.X > middle + Cross;
            svg.Lettering(
                hole + new Point2(left ? -2 : right ? 2 : 0, -Cross - 1), fastener, 2.5,
                left ? TextAnchor.Start : right ? TextAnchor.End : TextAnchor.Middle);
        }

        if (holes.Length > 1 && Math.Abs(holes[0].Y - holes[^1].Y) < DrawingSheet.Invisible)
        {
            svg.Line(new Point2(level.From, holes[0].Y), new Point2(level.To, holes[0].Y), Stroke.Centre);
            svg.Lettering(new Point2(level.From + 1, holes[0].Y - 1.5), "level", 2.5, TextAnchor.Start);

            // Clear of the cross at the middle and of its text.
            double y = holes[0].Y + 20;
            y = Math.Abs(y - centre.Y) < (2 * Cross) ? centre.Y + (2 * Cross) : y;
            DimensionLines.Horizontal(svg, holes[0], holes[^1], y,
                DimensionLines.Value(Math.Round(Math.Abs(holes[0].X - holes[^1].X), 2)));
        }
    }

    private static void DrawFoot(SvgSheet svg, string name, double width, double height)
    {
        double y = height - Unprinted - 6;
        double x = (width - Bar) / 2;
        svg.Line(new Point2(x, y), new Point2(x + Bar, y), Stroke.Outline);
        for (int tick = 0; tick <= 10; tick++)
        {
            svg.Line(new Point2(x + (10 * tick), y), new Point2(x + (10 * tick), y - (tick % 5 == 0 ? 4 : 2.5)), Stroke.Thin);
        }

        svg.Lettering(new Point2(width / 2, y + 4.5), "this bar is 100 mm long: hold a ruler against it before you drill", 2.5,
            TextAnchor.Middle);
        svg.Lettering(new Point2(width / 2, y - 12), $"{name}: print at 100 %, not fitted to the page; this edge down", 3.5,
            TextAnchor.Middle);
        svg.Lettering(new Point2(width / 2, y - 7), "look for cables and pipes in the wall before you drill", 2.5, TextAnchor.Middle);
    }
}
