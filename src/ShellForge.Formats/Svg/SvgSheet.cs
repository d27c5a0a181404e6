using System.Globalization;
using System.Text;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Svg;

/// <summary>
/// A drawing sheet in mm, origin top left, y down, as an SVG that prints at its true size. What is drawn later lies above.
/// </summary>
public sealed class SvgSheet : IDrawingSheet
{
    private const string Style =
        """
        <style>
        .o{stroke:#000;stroke-width:.5}.t{stroke:#000;stroke-width:.25}.f{stroke:#000;stroke-width:.7}
        .h{stroke:#000;stroke-width:.25;stroke-dasharray:3 .75}
        .c{stroke:#000;stroke-width:.25;stroke-dasharray:6 .75 .125 .75}
        .p{stroke:#000;stroke-width:.25;stroke-dasharray:6 .75 .125 .75 .125 .75}
        .n{stroke:none}
        path{stroke-linejoin:round;fill-rule:evenodd}
        text{font-family:"Liberation Sans",Arial,Helvetica,sans-serif;fill:#000}
        </style>
        <defs>
        <pattern id="hr" width="2.5" height="2.5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path class="t" d="M0 0V2.5" fill="none"/></pattern>
        <pattern id="hf" width="2.5" height="2.5" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)"><path class="t" d="M0 0V2.5" fill="none"/></pattern>
        <pattern id="hc" width="1.2" height="1.2" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path class="t" d="M0 0V1.2" fill="none"/></pattern>
        <pattern id="hd" width="1.2" height="1.2" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)"><path class="t" d="M0 0V1.2" fill="none"/></pattern>
        </defs>

        """;

    private readonly StringBuilder _body = new();

    /// <summary>How much wider bold letters run than plain ones, at most.</summary>
    public const double BoldShare = 1.12;

    // Capitals of the common sans-serif faces are 0.716 of the font size high; ISO 3098 counts the capitals.
    private const double CapitalShare = 0.716;

    // A digit of these faces is 0.556 of the font size wide; words of small letters run a little narrower.
    private const double WidthShare = 0.556;

    /// <summary>Width that a line of text takes, mm, rather too wide than too narrow.</summary>
    public static double WidthOf(string text, double height) => text.Length * height / CapitalShare * WidthShare;

    /// <summary>An empty sheet.</summary>
    /// <param name="width">Width, mm.</param>
    /// <param name="height">Height, mm.</param>
    /// <param name="title">Title for readers that show or speak one.</param>
    public SvgSheet(double width, double height, string title)
    {
        Width = width;
        Height = height;
        Title = title;
    }

    /// <summary>Width, mm.</summary>
    public double Width { get; }

    /// <summary>Height, mm.</summary>
    public double Height { get; }

    /// <summary>Title for readers that show or speak one.</summary>
    public string Title { get; }

    /// <inheritdoc />
    public void Line(Point2 from, Point2 to, Stroke stroke) =>
        Add($"<path class=\"{Class(stroke)}\" d=\"M{Text(from)}L{Text(to)}\"/>\n");

    /// <summary>Many straight lines of one kind.</summary>
    public void Lines(IEnumerable<(Point2 From, Point2 To)> lines, Stroke stroke)
    {
        var data = new StringBuilder();
        foreach ((Point2 from, Point2 to) in lines)
        {
            Append(data, 'M', from);
            Append(data, 'L', to);
        }

        if (data.Length > 0)
        {
            Add($"<path class=\"{Class(stroke)}\" d=\"{data}\"/>\n");
        }
    }

    /// <inheritdoc />
    public void Circle(Point2 centre, double radius, Stroke stroke, Fill fill = Fill.None) =>
        Add($"<circle class=\"{Class(stroke)}\" cx=\"{Text(centre.X)}\" cy=\"{Text(centre.Y)}\" r=\"{Text(radius)}\" "
            + $"fill=\"{Paint(fill)}\"/>\n");

    /// <inheritdoc />
    public void Area(IEnumerable<IReadOnlyList<Point2>> loops, Stroke stroke, Fill fill)
    {
        var data = new StringBuilder();
        foreach (IReadOnlyList<Point2> loop in loops)
        {
            for (int i = 0; i < loop.Count; i++)
            {
                Append(data, i == 0 ? 'M' : 'L', loop[i]);
            }

            data.Append('Z');
        }

        if (data.Length > 0)
        {
            Add($"<path class=\"{Class(stroke)}\" d=\"{data}\" fill=\"{Paint(fill)}\"/>\n");
        }
    }

    /// <inheritdoc />
    public void Polyline(IReadOnlyList<Point2> points, Stroke stroke)
    {
        var data = new StringBuilder();
        for (int i = 0; i < points.Count; i++)
        {
            Append(data, i == 0 ? 'M' : 'L', points[i]);
        }

        Add($"<path class=\"{Class(stroke)}\" d=\"{data}\" fill=\"none\"/>\n");
    }

    /// <inheritdoc />
    public void Lettering(Point2 at, string text, double height, TextAnchor anchor, Angle turn = default, bool bold = false)
    {
        string anchorName = anchor switch
        {
            TextAnchor.Middle => " text-anchor=\"middle\"",
            TextAnchor.End => " text-anchor=\"end\"",
            _ => "",
        };
        string turned = turn.Degrees == 0 ? "" : $" transform=\"rotate({Text(-turn.Degrees)} {Text(at)})\"";
        string weight = bold ? " font-weight=\"bold\"" : "";
        Add($"<text x=\"{Text(at.X)}\" y=\"{Text(at.Y)}\" "
            + $"font-size=\"{Text(height / CapitalShare)}\"{anchorName}{weight}{turned}>{Escape(text)}</text>\n");
    }

    /// <summary>The whole file.</summary>
    public override string ToString() =>
        $"<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{Text(Width)}mm\" height=\"{Text(Height)}mm\" viewBox=\"0 0 {Text(Width)} "
            + $"{Text(Height)}\" fill=\"none\" role=\"img\">\n"
        + $"<title>{Escape(Title)}</title>\n"
        + Style.ReplaceLineEndings("\n")
        + $"<rect width=\"{Text(Width)}\" height=\"{Text(Height)}\" fill=\"#fff\"/>\n"
        + _body
        + "</svg>\n";

    private void Add(string element) => _body.Append(element);

    private static string Class(Stroke stroke) => stroke switch
    {
        Stroke.Outline => "o",
        Stroke.Thin => "t",
        Stroke.Hidden => "h",
        Stroke.Centre => "c",
        Stroke.Phantom => "p",
        Stroke.Frame => "f",
        _ => "n",
    };

    private static string Paint(Fill fill) => fill switch
    {
        Fill.Blank => "#fff",
        Fill.HatchRising => "url(#hr)",
        Fill.HatchFalling => "url(#hf)",
        Fill.HatchClose => "url(#hc)",
        Fill.HatchCloseFalling => "url(#hd)",
        Fill.Grey => "#ddd",
        Fill.Solid => "#000",
        _ => "none",
    };

    private static string Text(Point2 point) => $"{Text(point.X)} {Text(point.Y)}";

    private static void Append(StringBuilder data, char command, Point2 point)
    {
        Span<char> text = stackalloc char[2 * MostDigits];
        int end = Write(text, point.X);
        text[end++] = ' ';
        end += Write(text[end..], point.Y);
        data.Append(command).Append(text[..end]);
    }

    private static string Text(double value)
    {
        Span<char> text = stackalloc char[MostDigits];
        return new string(text[..Write(text, value)]);
    }

    // A sign, the digits of a long, a point, a nought before it.
    private const int MostDigits = 24;

    // A thousandth of a millimetre on paper is finer than any printer. Drawings are mostly numbers, so they are written by whole ones.
    private static int Write(Span<char> text, double value)
    {
        long thousandths = (long)Math.Round(1000 * value, MidpointRounding.AwayFromZero);
        (long whole, long rest) = Math.DivRem(Math.Abs(thousandths), 1000);
        int end = 0;
        if (thousandths < 0)
        {
            text[end++] = '-';
        }

        whole.TryFormat(text[end..], out int digits, default, CultureInfo.InvariantCulture);
        end += digits;
        if (rest > 0)
        {
            text[end++] = '.';
            for (long place = 100; rest > 0; place /= 10)
            {
                text[end++] = (char)('0' + (rest / place));
                rest %= place;
            }
        }

        return end;
    }

    private static string Escape(string text) =>
        XmlText.Clean(text).Replace("&", "&amp;", StringComparison.Ordinal)
            .Replace("<", "&lt;", StringComparison.Ordinal)
            .Replace(">", "&gt;", StringComparison.Ordinal);
}
