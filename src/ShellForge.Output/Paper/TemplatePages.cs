using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Formats.Pdf;
using ShellForge.Formats.Svg;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Output.Paper;

/// <summary>
/// Lays templates on sheets. A page is A4 with all that matters inside of what A4 and letter have in common, wherever the printer puts the
/// rest; what is larger goes over several pages that lap and are cut and joined along marked lines. An SVG is one sheet as large as it has
/// to be. Every sheet has a bar along x and one along y to hold a ruler against.
/// </summary>
internal static class TemplatePages
{
    // Letter is 17.6 mm lower than A4; printers leave about 5 mm white.
    private const double Left = 18;
    private const double Top = 36;
    private const double Right = 198;
    private const double Bottom = 240;
    private const double Bar = 100;

    // Neighbouring pages share so much, mm; the line to cut along lies in its middle.
    private const double Lap = 10;
    private const double Small = 2.5;

    private static double Wide => Right - Left;

    private static double Tall => Bottom - Top;

    /// <summary>One sheet with a template.</summary>
    public static SvgSheet Svg(Template template, string name)
    {
        double width = Math.Max(PdfDocument.Width, Math.Ceiling(template.Extent.Size.X) + PdfDocument.Width - Wide);
        double height = Math.Max(PdfDocument.Height, Math.Ceiling(template.Extent.Size.Y) + PdfDocument.Height - Tall);
        var svg = new SvgSheet(width, height, $"{name}: {template.Title}");
        var middle = new Point2((Left + width - PdfDocument.Width + Right) / 2, (Top + height - PdfDocument.Height + Bottom) / 2);
        template.Draw(svg, At(template.Extent, middle));
        Frame(svg, template, name, (width, height), "");
        return svg;
    }

    /// <summary>All templates as one document.</summary>
    public static byte[] Pdf(ImmutableArray<Template> templates, string name)
    {
        var document = new PdfDocument($"{name}: templates at their true size");
        foreach (Template template in templates)
        {
            int across = Pages(template.Extent.Size.X, Wide);
            int down = Pages(template.Extent.Size.Y, Tall);
            for (int row = 0; row < down; row++)
            {
                for (int column = 0; column < across; column++)
                {
                    Tile(new PdfSheet(document.AddPage()), template, name, (across, down), (column, row));
                }
            }
        }

        return document.ToBytes();
    }

    /// <summary>How many pages a length takes.</summary>
    internal static int Pages(double length, double page) =>
        length <= page ? 1 : (int)Math.Ceiling((length - Lap) / (page - Lap));

    private static void Tile(PdfSheet sheet, Template template, string name, (int Across, int Down) pages, (int Column, int Row) page)
    {
        // All pages together, laid out: the window of each shows its share.
        double wide = Wide + ((pages.Across - 1) * (Wide - Lap));
        double tall = Tall + ((pages.Down - 1) * (Tall - Lap));
        var shift = new Point2(page.Column * (Wide - Lap), page.Row * (Tall - Lap));
        var middle = new Point2(Left + (wide / 2), Top + (tall / 2));
        var window = new Box2(new Point2(Left, Top), new Point2(Right, Bottom));
        sheet.BeginWindow(window);
        template.Draw(sheet, At(template.Extent, middle - shift));
        sheet.EndWindow();
        string which = "";
        if (pages != (1, 1))
        {
            which = string.Create(CultureInfo.InvariantCulture,
                $"Page {page.Column + 1} of {pages.Across} across, {page.Row + 1} of {pages.Down} down: cut along the dashed lines and "
                    + $"join.");
            Seams(sheet, pages, page);
        }

        Frame(sheet, template, name, (PdfDocument.Width, PdfDocument.Height), which);
    }

    private static void Seams(PdfSheet sheet, (int Across, int Down) pages, (int Column, int Row) page)
    {
        void Seam(bool isThere, Point2 from, Point2 to)
        {
            if (isThere)
            {
                sheet.Line(from, to, Stroke.Hidden);
            }
        }

        const double half = Lap / 2;
        Seam(page.Column > 0, new Point2(Left + half, Top), new Point2(Left + half, Bottom));
        Seam(page.Column + 1 < pages.Across, new Point2(Right - half, Top), new Point2(Right - half, Bottom));
        Seam(page.Row > 0, new Point2(Left, Top + half), new Point2(Right, Top + half));
        Seam(page.Row + 1 < pages.Down, new Point2(Left, Bottom - half), new Point2(Right, Bottom - half));
    }

    private static Func<Point2, Point2> At(Box2 extent, Point2 middle) =>
        place => new Point2(middle.X + (place.X - extent.Centre.X), middle.Y - (place.Y - extent.Centre.Y));

    // Head, hints, and the bars.
    private static void Frame(IDrawingSheet sheet, Template template, string name, (double Width, double Height) size, string which)
    {
        sheet.Lettering(new Point2(Left, 24), $"{name}: {template.Title}", 3.5, TextAnchor.Start, bold: true);
        sheet.Lettering(new Point2(Left, 29.5), "Print at 100 %, not fitted to the page.", Small, TextAnchor.Start);
        if (which.Length > 0)
        {
            sheet.Lettering(new Point2(Left, 33.8), which, Small, TextAnchor.Start);
        }

        double foot = size.Height - PdfDocument.Height + Bottom;
        for (int i = 0; i < template.Hints.Length; i++)
        {
            sheet.Lettering(new Point2(Left, foot + 6 + (4 * i)), template.Hints[i], Small, TextAnchor.Start);
        }

        double y = foot + 24;
        double x = (size.Width - Bar) / 2;
        sheet.Line(new Point2(x, y), new Point2(x + Bar, y), Stroke.Outline);
        const double side = 11;
        double from = (size.Height - Bar) / 2;
        sheet.Line(new Point2(side, from), new Point2(side, from + Bar), Stroke.Outline);
        for (int tick = 0; tick <= 10; tick++)
        {
            double length = tick % 5 == 0 ? 4 : 2.5;
            sheet.Line(new Point2(x + (10 * tick), y), new Point2(x + (10 * tick), y - length), Stroke.Thin);
            sheet.Line(new Point2(side, from + (10 * tick)), new Point2(side - length, from + (10 * tick)), Stroke.Thin);
        }

        sheet.Lettering(new Point2(size.Width / 2, y + 4.5), "both bars are 100 mm long: hold a ruler against them first", Small,
            TextAnchor.Middle);
        sheet.Lettering(new Point2(side + 4, from + (Bar / 2)), "100 mm", Small, TextAnchor.Middle, Angle.FromDegrees(90));
    }
}
