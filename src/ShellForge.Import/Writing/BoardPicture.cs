using System.Collections.Immutable;
using System.Text;
using ShellForge.Geometry.Numerics;
using ShellForge.Import.Drawing;
using ShellForge.Import.Files;
using ShellForge.Import.Merging;
using ShellForge.Import.Patterns;

namespace ShellForge.Import.Writing;

/// <summary>
/// Draws an import as SVG, to be looked at once: the LED side as the ECAD shows it and the back as it is held, each with edge,
/// holes, parts and heights. A mirrored or wrongly scaled board shows at one look.
/// </summary>
public static class BoardPicture
{
    private const double PanelSize = 460;
    private const double Margin = 30;
    private const double HeadRoom = 64;
    private const int MostDrawn = 3000;
    private const int MostTold = 3;

    /// <summary>The SVG text.</summary>
    public static string Svg(ImportResult result)
    {
        ImportedBoard board = result.Board;
        Box2 box = Extent(board);
        double size = Math.Max(Math.Max(box.Size.X, box.Size.Y), EcadTolerances.SmallestBoard);
        double scale = (PanelSize - (2 * Margin)) / size;
        var svg = new StringBuilder();
        double width = (2 * PanelSize) + Margin;
        double height = PanelSize + HeadRoom + 96;
        svg.Append("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 ").Append(N(width)).Append(' ').Append(N(height))
            .Append("\" font-family=\"sans-serif\" font-size=\"12\">\n");
        svg.Append("<title>").Append(Escaped(result.Options.Name)).Append(", as imported</title>\n");
        svg.Append("<rect width=\"100%\" height=\"100%\" fill=\"#ffffff\"/>\n");
        Text(svg, new Point2(Margin, 24), Headline(result), 15, "#1a1a1a", TextLook.Bold);
        Panel(svg, board, box, scale, 0, mirrored: false);
        Panel(svg, board, box, scale, PanelSize + Margin, mirrored: true);
        Legend(svg, board, scale, PanelSize + HeadRoom + 12);
        svg.Append("</svg>\n");
        return svg.ToString();
    }

    private enum TextLook
    {
        Plain,
        Bold,

        // With a bright rim, so that it reads over what is drawn.
        Haloed,
    }

    private static string Headline(ImportResult result)
    {
        ImportedBoard board = result.Board;
        string size = board.Outline is not { } o ? "no outline"
            : o.Outer.Circle is { } c
                ? $"{Numeral.Text(c.Diameter, 2)} mm round{(o.Bore?.Loop.Circle is { } b ? $", bore {Numeral.Text(b.Diameter, 2)}" : "")}"
            : $"{Numeral.Text(o.Outer.Bounds.Size.X, 2)} x {Numeral.Text(o.Outer.Bounds.Size.Y, 2)} mm";
        string thick = board.Thickness is { } t ? $", {Numeral.Text(t, 2)} thick" : ", thickness unknown";
        return $"{Escaped(result.Options.Name)}: {size}{thick}";
    }

    private static Box2 Extent(ImportedBoard board)
    {
        if (board.Outline is { } outline)
        {
            return outline.Outer.Bounds;
        }

        Box2 box = Box2.Of(board.Parts.Where(p => p.Placed).Select(p => p.At).Concat(board.Holes.Select(h => h.At)));
        return box.IsEmpty ? new Box2(default, new Point2(1, 1)) : box;
    }

    private static void Panel(StringBuilder svg, ImportedBoard board, Box2 box, double scale, double left, bool mirrored)
    {
        string side = mirrored ? "back, as held (x runs left)" : "LED side, as the ECAD shows it";
        Text(svg, new Point2(left + Margin, 50), side, 13, "#444444");
        Point2 middle = box.Centre;
        double cx = left + (PanelSize / 2);
        double cy = HeadRoom + (PanelSize / 2);
        svg.Append("<g transform=\"matrix(").Append(N(mirrored ? -scale : scale)).Append(" 0 0 ").Append(N(-scale)).Append(' ')
            .Append(N(cx + ((mirrored ? scale : -scale) * middle.X))).Append(' ').Append(N(cy + (scale * middle.Y)))
            .Append(")\" stroke-width=\"").Append(N(1 / scale)).Append("\">\n");
        if (board.Outline is { } outline)
        {
            svg.Append("<path fill=\"#e3efe4\" fill-rule=\"evenodd\" stroke=\"#1f5d2b\" stroke-width=\"").Append(N(2 / scale))
                .Append("\" d=\"");
            PathOf(svg, outline.Outer);
            foreach (ImportedCutout cutout in outline.Cutouts.Where(c => !c.AlsoDrilled))
            {
                PathOf(svg, cutout.Loop);
            }

            svg.Append("\"/>\n");
        }

        Holes(svg, board);
        foreach (ImportedCutout hole in board.Outline?.Cutouts.Where(HoleLines.IsHole) ?? [])
        {
            Circle(svg, hole.Loop.Circle!.Value.Centre, hole.Loop.Circle!.Value.Diameter, "#ffffff", "#b3261e");
        }

        foreach (CirclePattern circle in board.LedPatterns.Select(led => led.Pattern).OfType<CirclePattern>()
            .Where(c => board.Parts[c.Members[0]].Bottom == mirrored))
        {
            Circle(svg, circle.Centre, circle.Diameter, "none", "#c98a00", $" stroke-dasharray=\"{N(4 / scale)} {N(3 / scale)}\"");
        }

        foreach (ImportedPart part in board.Parts.Where(p => p.Placed && p.Skip is null && p.Bottom == mirrored).Take(MostDrawn))
        {
            svg.Append("<g data-ref=\"").Append(Escaped(part.Reference)).Append("\">");
            PartBody(svg, part, scale);
            svg.Append("</g>\n");
        }

        svg.Append("</g>\n");
        double across = mirrored ? -scale : scale;
        Labels(svg, board, at => new Point2(cx + (across * (at.X - middle.X)), cy - (scale * (at.Y - middle.Y))), mirrored);
        Axes(svg, left + Margin, PanelSize + HeadRoom - 8, mirrored);
    }

    private static void PathOf(StringBuilder svg, OutlineLoop loop)
    {
        Point2 start = loop.Segments[0].From;
        svg.Append('M').Append(N(start.X)).Append(' ').Append(N(start.Y));
        foreach (EdgeSegment s in loop.Segments)
        {
            if (!s.IsArc)
            {
                svg.Append('L').Append(N(s.To.X)).Append(' ').Append(N(s.To.Y));
                continue;
            }

            // Arcs beyond half a turn are drawn in two.
            int pieces = Math.Abs(s.SweepDegrees) > 180 ? 2 : 1;
            for (int i = 1; i <= pieces; i++)
            {
                Point2 to = i == pieces ? s.To : s.At(0.5);
                svg.Append('A').Append(N(s.Radius)).Append(' ').Append(N(s.Radius)).Append(" 0 0 ").Append(s.SweepDegrees > 0 ? '1' : '0')
                    .Append(' ').Append(N(to.X)).Append(' ').Append(N(to.Y));
            }
        }

        svg.Append('Z');
    }

    private static void Holes(StringBuilder svg, ImportedBoard board)
    {
        foreach (ImportedHole h in board.Holes.Where(h => h.Kind is not HoleKind.Outside).Take(MostDrawn))
        {
            string edge = h.Kind switch
            {
                HoleKind.Mounting => "#b3261e",
                HoleKind.Notch => "#7b1fa2",
                HoleKind.Tooling => "#b3261e",
                _ => "#8a8a8a",
            };
            Circle(svg, h.At, h.Diameter, "#ffffff", edge);
        }

        foreach (ImportedSlot s in board.Slots.Take(MostDrawn))
        {
            svg.Append("<polyline fill=\"none\" stroke=\"#8a8a8a\" stroke-linecap=\"round\" stroke-width=\"").Append(N(s.Width))
                .Append("\" points=\"");
            foreach (Point2 p in s.Path.Take(200))
            {
                svg.Append(N(p.X)).Append(',').Append(N(p.Y)).Append(' ');
            }

            svg.Append("\"/>\n");
        }
    }

    private static void PartBody(StringBuilder svg, ImportedPart part, double scale)
    {
        bool isLed = PackageBook.IsLed(part.Reference, part.Package, part.Value);
        string fill = isLed ? "#f5c542" : part.Height is null ? "#f2b8b5" : "#a8c7fa";
        Point2 size = !part.Body.IsEmpty ? part.Body.Size : part.Match is { Length: > 0 } m ? new Point2(m.Length, m.Width) : default;
        if (size == default)
        {
            Circle(svg, part.At, 5 / scale, fill, "#333333");
            return;
        }

        Point2 at = part.BodyCentre;
        svg.Append("<rect x=\"").Append(N(-size.X / 2)).Append("\" y=\"").Append(N(-size.Y / 2)).Append("\" width=\"").Append(N(size.X))
            .Append("\" height=\"").Append(N(size.Y))
            .Append("\" fill=\"").Append(fill).Append("\" fill-opacity=\"0.85\" stroke=\"#333333\" transform=\"translate(").Append(N(at.X))
                .Append(' ').Append(N(at.Y))
            .Append(") rotate(").Append(N(part.Rotation)).Append(")\"/>\n");
    }

    // Names of what is tall or unknown, and of the first LED: enough to tell a mirrored side, few enough to read.
    private static void Labels(StringBuilder svg, ImportedBoard board, Func<Point2, Point2> onSheet, bool mirrored)
    {
        List<ImportedPart> side = [.. board.Parts.Where(p => p.Placed && p.Skip is null && p.Bottom == mirrored)];
        IEnumerable<ImportedPart> named = side.Where(p => !PackageBook.IsLed(p.Reference, p.Package, p.Value) && p.Match?.Passive != true)
            .OrderByDescending(p => p.Height ?? 1000).ThenBy(p => ReferenceOrder.Key(p.Reference)).Take(16);
        var placed = new List<Point2>();
        IEnumerable<ImportedPart> leds = LedLine.AllOf(board).Where(line => line.First.Bottom == mirrored)
            .SelectMany(line => line.Members.Take(2)).Select(i => board.Parts[i]);
        foreach (ImportedPart p in leds.Concat(named))
        {
            Point2 place = onSheet(p.BodyCentre);
            if (placed.Exists(q => Math.Abs(q.X - place.X) < 52 && Math.Abs(q.Y - place.Y) < 11))
            {
                continue;
            }

            placed.Add(place);
            string height = p.Height is { } h ? $" {Numeral.Text(h, 2)}" : " ?";
            Text(svg, new Point2(place.X + 3, place.Y - 3), p.Reference + height, 10, "#111111", TextLook.Haloed);
        }
    }

    private static void Axes(StringBuilder svg, double x, double y, bool mirrored)
    {
        double tip = mirrored ? x - 22 : x + 22;
        svg.Append("<path fill=\"none\" stroke=\"#1a1a1a\" d=\"M").Append(N(x)).Append(' ').Append(N(y)).Append('H').Append(N(tip))
            .Append('M').Append(N(x)).Append(' ').Append(N(y)).Append('V').Append(N(y - 22)).Append("\"/>\n");
        Text(svg, new Point2(mirrored ? tip - 9 : tip + 3, y + 4), "x", 11, "#1a1a1a");
        Text(svg, new Point2(x - 4, y - 26), "y", 11, "#1a1a1a");
    }

    private static void Legend(StringBuilder svg, ImportedBoard board, double scale, double y)
    {
        double length = scale > 4 ? 10 : scale > 1.2 ? 50 : 100;
        svg.Append("<path fill=\"none\" stroke=\"#1a1a1a\" d=\"M").Append(N(Margin)).Append(' ').Append(N(y)).Append("v8h")
            .Append(N(length * scale)).Append("v-8\"/>\n");
        Text(svg, new Point2(Margin, y + 22), $"{Numeral.Text(length)} mm", 11, "#1a1a1a");
        ImmutableArray<LedLine> patterns = LedLine.AllOf(board);
        string leds = patterns.IsEmpty ? "no circle, arc, grid or row of LEDs found"
            : string.Join("; ", patterns.Take(MostTold).Select(line => line.Words));
        Text(svg, new Point2(Margin, y + 42), leds, 12, "#1a1a1a");
        int mounting = board.Holes.Count(h => h.Kind == HoleKind.Mounting) + (board.Outline?.Cutouts.Count(HoleLines.IsHole) ?? 0);
        int top = board.Parts.Count(p => p.Placed && p.Skip is null && !p.Bottom);
        int bottom = board.Parts.Count(p => p.Placed && p.Skip is null && p.Bottom);
        int unknown = board.Parts.Count(p => p.Placed && p.Skip is null && p.Height is null);
        Text(svg, new Point2(Margin, y + 60),
            $"{mounting} screw holes (red), {board.Holes.Length} holes in all; {top} parts on the LED side, {bottom} on the back, "
                + $"{unknown} of unknown height (pink); number after a name: height in mm", 12, "#1a1a1a");
    }

    private static void Circle(StringBuilder svg, Point2 at, double diameter, string fill, string stroke, string more = "") =>
        svg.Append("<circle cx=\"").Append(N(at.X)).Append("\" cy=\"").Append(N(at.Y)).Append("\" r=\"").Append(N(diameter / 2))
            .Append("\" fill=\"").Append(fill).Append("\" stroke=\"").Append(stroke).Append('"').Append(more).Append("/>\n");

    private static void Text(StringBuilder svg, Point2 at, string text, double size, string fill, TextLook look = TextLook.Plain) =>
        svg.Append("<text x=\"").Append(N(at.X)).Append("\" y=\"").Append(N(at.Y)).Append("\" font-size=\"").Append(N(size))
            .Append("\" fill=\"").Append(fill).Append('"')
            .Append(look == TextLook.Bold ? " font-weight=\"bold\"" : "")
                .Append(look == TextLook.Haloed ? " stroke=\"#ffffff\" stroke-width=\"2.5\" paint-order=\"stroke\"" : "")
            .Append('>').Append(Escaped(text)).Append("</text>\n");

    private static string N(double value) => Numeral.Text(value, 4);

    private static string Escaped(string text)
    {
        var escaped = new StringBuilder(text.Length);
        foreach (char c in text)
        {
            _ = c switch
            {
                '<' => escaped.Append("&lt;"),
                '>' => escaped.Append("&gt;"),
                '&' => escaped.Append("&amp;"),
                '"' => escaped.Append("&quot;"),
                _ when char.IsControl(c) || char.IsSurrogate(c) || c is '\ufffe' or '\uffff' => escaped.Append(' '),
                _ => escaped.Append(c),
            };
        }

        return escaped.ToString();
    }
}
