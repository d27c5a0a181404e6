using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Formats.Svg;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Output.Drawings;

/// <summary>
/// A sheet of the ISO A series in landscape with its frame and title block, a standard scale, and the map from the model's mm to
/// the sheet's.
/// </summary>
internal sealed class DrawingSheet
{
    /// <summary>What no one can see on paper at any of the scales, mm.</summary>
    public const double Invisible = 0.005;

    private const double Margin = 10;
    private const double TitleHeight = 22;
    private const double TitleWidth = 110;

    // ISO 5455, from large to small; ISO 216 sizes from A4 up.
    private static readonly (double Factor, string Name)[] Scales =
        [(5, "5:1"), (2, "2:1"), (1, "1:1"), (0.5, "1:2"), (0.2, "1:5")];

    private static readonly (double Width, double Height, string Name)[] Sizes = [(297, 210, "A4"), (420, 297, "A3")];

    private readonly Point2 _modelCentre;
    private readonly Point2 _sheetCentre;

    private DrawingSheet(SvgSheet svg, double scale, Point2 modelCentre, Point2 sheetCentre)
    {
        Svg = svg;
        Scale = scale;
        _modelCentre = modelCentre;
        _sheetCentre = sheetCentre;
    }

    /// <summary>What is drawn on.</summary>
    public SvgSheet Svg { get; }

    /// <summary>Sheet mm a model mm.</summary>
    public double Scale { get; }

    /// <summary>A sheet on which an extent of the model fits with room for dimensions round it.</summary>
    /// <param name="model">What is drawn, model mm.</param>
    /// <param name="room">Room for dimensions: left, above, right and below, sheet mm.</param>
    /// <param name="name">Name of the housing.</param>
    /// <param name="view">What is shown.</param>
    /// <param name="sizes">What the dimensions are.</param>
    public static DrawingSheet For(
        Box2 model, (double Left, double Above, double Right, double Below) room, string name, string view,
        string sizes = "dimensions in mm")
    {
        Point2 size = model.Max - model.Min;
        (double Factor, string Name) scale = Scales[^1];
        (double Width, double Height, string Name) paper = Sizes[^1];
        bool found = false;

        // The small sheet first at true size or larger; a housing that does not fit it gets the large sheet before it shrinks.
        foreach ((double Factor, string Name) candidate in Scales)
        {
            foreach ((double Width, double Height, string Name) sheet in Sizes)
            {
                bool fits = (size.X * candidate.Factor) + room.Left + room.Right <= sheet.Width - (2 * Margin)
                    && (size.Y * candidate.Factor) + room.Above + room.Below <= sheet.Height - (2 * Margin) - TitleHeight;
                bool useful = candidate.Factor <= 1 || sheet.Name == "A4";
                if (!found && fits && useful)
                {
                    (scale, paper, found) = (candidate, sheet, true);
                }
            }
        }

        var svg = new SvgSheet(paper.Width, paper.Height, $"{name}: {view}");
        DrawTitle(svg, paper, name, view, sizes, scale.Name);
        double left = Margin + room.Left;
        double right = paper.Width - Margin - room.Right;
        double top = Margin + room.Above;
        double bottom = paper.Height - Margin - TitleHeight - room.Below;
        return new DrawingSheet(
            svg, scale.Factor, model.Centre, new Point2((left + right) / 2, (top + bottom) / 2));
    }

    /// <summary>A model point on the sheet.</summary>
    public Point2 At(Point2 model) => new(
        _sheetCentre.X + (Scale * (model.X - _modelCentre.X)), _sheetCentre.Y - (Scale * (model.Y - _modelCentre.Y)));

    /// <summary>A model point on the sheet.</summary>
    public Point2 At(double x, double y) => At(new Point2(x, y));

    /// <summary>Loops of the model on the sheet.</summary>
    public IEnumerable<IReadOnlyList<Point2>> At(IEnumerable<ImmutableArray<Point2>> loops) =>
        loops.Select(loop => (IReadOnlyList<Point2>)[.. loop.Select(At)]);

    private static void DrawTitle(
        SvgSheet svg, (double Width, double Height, string Name) paper, string name, string view, string sizes, string scale)
    {
        Box(svg, new Point2(Margin, Margin), new Point2(paper.Width - Margin, paper.Height - Margin));
        Point2 corner = new(paper.Width - Margin - TitleWidth, paper.Height - Margin - TitleHeight);
        Box(svg, corner, new Point2(paper.Width - Margin, paper.Height - Margin));
        double split = corner.X + TitleWidth - 34;
        svg.Line(new Point2(split, corner.Y), new Point2(split, corner.Y + TitleHeight), Stroke.Thin);
        double room = split - corner.X - 6;
        svg.Lettering(corner + new Point2(3, 8), name, Fitted(name, 4, room), TextAnchor.Start, bold: true);
        svg.Lettering(corner + new Point2(3, 14), view, Fitted(view, 2.5, room), TextAnchor.Start);
        svg.Lettering(corner + new Point2(3, 19), sizes, 1.8, TextAnchor.Start);
        svg.Lettering(new Point2(split + 3, corner.Y + 8), string.Create(CultureInfo.InvariantCulture, $"scale {scale}"), 3.5,
            TextAnchor.Start);
        svg.Lettering(new Point2(split + 3, corner.Y + 14), paper.Name, 2.5, TextAnchor.Start);
        svg.Lettering(new Point2(split + 3, corner.Y + 19), "ShellForge", 1.8, TextAnchor.Start);
    }

    // ISO 3098 heights where they fit; a name that is longer is written smaller rather than over the next field.
    private static double Fitted(string text, double height, double room) =>
        Math.Min(height, height * room / (SvgSheet.BoldShare * SvgSheet.WidthOf(text, height)));

    private static void Box(SvgSheet svg, Point2 min, Point2 max) =>
        svg.Area([[min, new Point2(max.X, min.Y), max, new Point2(min.X, max.Y)]], Stroke.Frame, Fill.None);
}
