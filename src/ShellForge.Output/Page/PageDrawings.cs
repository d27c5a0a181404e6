using System.Globalization;
using System.Text;

namespace ShellForge.Output.Page;

/// <summary>
/// A drawing as wide as the page has room for, and the same one large, to be moved about, for those whose page is narrow or whose eyes are
/// not what they were. The large one opens without the script; the script only begins it where the small one was touched.
/// </summary>
internal static class PageDrawings
{
    // Pixels a millimetre of paper: the smallest lettering, 1.8 mm high, is read at arm's length from this on.
    private const double PixelsPerMillimetre = 4;

    public static void Append(StringBuilder html, PageDrawing drawing, int number)
    {
        string title = PageHtml.Text(drawing.Title);
        string large = string.Create(
            CultureInfo.InvariantCulture,
            $"width=\"{PixelsPerMillimetre * drawing.Width:0}\" height=\"{PixelsPerMillimetre * drawing.Height:0}\" viewBox=\"0 0 "
                + $"{drawing.Width:0.###} {drawing.Height:0.###}\"");
        html.Append(CultureInfo.InvariantCulture, $"<figure class=\"drawing\" id=\"drawing-{number}\"><div class=\"small-sheet\">");
        html.Append(WithId(drawing.Svg, number));

        // Over the drawing, not round it: its letters would all be part of the button's name.
        html.Append(CultureInfo.InvariantCulture,
            $"<button type=\"button\" popovertarget=\"sheet-{number}\"><span>Open large<span class=\"skip\">: "
                + $"{title}</span></span></button></div>");
        html.Append($"<figcaption>{title}</figcaption>\n");
        html.Append(CultureInfo.InvariantCulture,
            $"<div class=\"large-sheet\" id=\"sheet-{number}\" popover role=\"dialog\" aria-label=\"{title}\">");
        html.Append($"<div class=\"bar\"><p>{title}</p>");
        html.Append(
            "<button type=\"button\" class=\"plain\" data-grow=\"0.8\">Smaller</button><button type=\"button\" class=\"plain\" "
                + "data-grow=\"1.25\">Larger</button>");
        html.Append(CultureInfo.InvariantCulture,
            $"<button type=\"button\" class=\"plain\" popovertarget=\"sheet-{number}\" popovertargetaction=\"hide\">Close</button></div>");
        html.Append(
            $"<div class=\"room\" tabindex=\"0\" autofocus role=\"group\" aria-label=\"The drawing: arrow keys move it, plus and minus "
                + $"make it larger and smaller\">");
        html.Append(CultureInfo.InvariantCulture,
            $"<svg {large} role=\"img\" aria-label=\"{title}\"><use href=\"#svg-{number}\" width=\"{drawing.Width:0.###}\" "
                + $"height=\"{drawing.Height:0.###}\"/></svg></div></div></figure>\n");
    }

    private static string WithId(string svg, int number) =>
        string.Create(CultureInfo.InvariantCulture, $"<svg id=\"svg-{number}\"") + svg["<svg".Length..];
}
