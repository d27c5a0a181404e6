using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Checks.Gauges;
using ShellForge.Formats.Svg;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Output.Drawings;
using ShellForge.Output.Looks;
using ShellForge.Planning.Plan;

namespace ShellForge.Output.Paper;

/// <summary>
/// What can be tried with paper before anything is printed in plastic: the board from both sides, the holes in the wall, the label. Up in
/// use is up on every sheet.
/// </summary>
internal static class Templates
{
    private const string LedSideFile = "paper-led-side";
    private const string BackFile = "paper-back";
    private const string DrillFile = "paper-drill";
    private const string LabelFile = "paper-label";
    private const string LabelInsideFile = "paper-label-inside";

    /// <summary>Names of the files that templates have, without their ending.</summary>
    public static ImmutableArray<string> Files { get; } = [LedSideFile, BackFile, DrillFile, LabelFile, LabelInsideFile];

    private const double Cross = 2;
    private const double HoleText = 1.6;
    private const double PartText = 1.8;

    // The level line and its word stand out past the outline, mm.
    private const double LevelPast = 10;

    // Round the outline, for the texts at holes near it, mm.
    private const double Room = 4;

    /// <summary>The templates that a housing has.</summary>
    public static ImmutableArray<Template> Of(HousingUnderCheck housing)
    {
        var templates = ImmutableArray.CreateBuilder<Template>();
        templates.Add(BoardSeen(housing, BoardSide.Top));
        templates.Add(BoardSeen(housing, BoardSide.Bottom));
        if (housing.Plan.Mount?.Drilling is { } drilling)
        {
            Box2 extent = DrillTemplate.Extent(housing, drilling);
            templates.Add(new Template(DrillFile, "where to drill",
                ["Tape it to the wall, level. Look for cables and pipes in the wall before you drill."], extent,
                (sheet, at) => DrillTemplate.Draw(
                    sheet, housing, drilling, at, (at(extent.Min).X - LevelPast, at(extent.Max).X + LevelPast))));
        }

        Label(housing, templates);
        return templates.ToImmutable();
    }

    private static Template BoardSeen(HousingUnderCheck housing, BoardSide side)
    {
        CircuitBoard board = housing.Board.Board;
        Angle upright = housing.Board.Upright;

        // Turned over about the line that points up, as hands do it: left and right change places.
        bool back = side == BoardSide.Bottom;
        Point2 Seen(Point2 place)
        {
            Point2 turned = place.Turned(upright);
            return back ? new Point2(0 - turned.X, turned.Y) : turned;
        }

        Region laminate = board.Outline.Region;
        Box2 extent = Box2.Of(laminate.Loops.SelectMany(loop => loop).Select(Seen)).Grown(Room);
        string sizes = housing.Board.Measured.IsEmpty ? "nominal sizes" : "sizes as measured";
        return new Template(
            back ? BackFile : LedSideFile,
            back ? "back, as held" : "LED side",
            [
                back ? "Turn the board over like a page and hold it to this sheet: outline, holes and parts agree."
                    : "Hold the board to this sheet with its LEDs towards you: outline, holes and LEDs agree.",
                $"If the other sheet agrees instead, the board file is mirrored. Drawn with {sizes}.",
            ],
            extent,
            (sheet, at) => Draw(sheet, board, side, place => at(Seen(place))));
    }

    private static void Draw(IDrawingSheet sheet, CircuitBoard board, BoardSide side, Func<Point2, Point2> at)
    {
        void Outline(Region region, Fill fill) =>
            sheet.Area([region], at, Stroke.Thin, fill);

        Outline(board.Outline.Region, Fill.None);
        if (side == BoardSide.Top)
        {
            foreach (PixelCircle circle in board.PixelCircles)
            {
                foreach (Pixel pixel in circle.Pixels)
                {
                    Outline(BoardBodies.Seen(circle, pixel), Fill.None);
                }

                if (!circle.Pixels.IsEmpty)
                {
                    Point2 first = at(circle.Pixels[0].At) + new Point2(0, PartText / 2);
                    sheet.Lettering(first, circle.Pixels[0].Ref, PartText, TextAnchor.Middle);
                }
            }
        }

        foreach (BoardPart part in board.Parts.Where(part => part.Side == side))
        {
            Region body = BoardBodies.Seen(part);
            Outline(body, Fill.Grey);
            double room = Math.Min(part.Length, part.Round ? part.Length : part.Width);
            if (room > PartText)
            {
                sheet.Lettering(at(part.At) + new Point2(0, PartText / 2), part.Ref, PartText, TextAnchor.Middle);
            }
        }

        foreach (BoardHole hole in board.Holes)
        {
            Point2 middle = at(hole.At);
            sheet.Circle(middle, hole.Diameter / 2, Stroke.Thin);
            double reach = (hole.Diameter / 2) + Cross;
            sheet.Cross(middle, reach, Stroke.Thin);
            if (hole.For == HolePurpose.Mount)
            {
                sheet.Lettering(middle + new Point2(0, reach + HoleText + 0.4),
                    $"{hole.Name} \u00D8{DimensionLines.Value(hole.Diameter)}", HoleText, TextAnchor.Middle);
            }
        }

        sheet.Cross(at(Point2.Origin), Cross, Stroke.Thin);
    }

    // Letters on the outer floor run mirrored in plan; whoever reads them has turned the housing over.
    private static void Label(HousingUnderCheck housing, ImmutableArray<Template>.Builder templates)
    {
        LetteringPlan[] outside = [.. housing.Plan.Lettering.Where(line => line.Part == PartNames.Tub && line.FromZ == 0)];
        LetteringPlan[] inside = [.. housing.Plan.Lettering.Where(line => line.Part == PartNames.Tub && line.FromZ > 0)];
        foreach ((LetteringPlan[] lines, bool below) in new[] { (outside, true), (inside, false) })
        {
            if (lines.Length == 0)
            {
                continue;
            }

            Angle upright = housing.Board.Upright;
            Region Seen(Region region) => below ? region.Turned(upright).MirroredX() : region.Turned(upright);
            Region floor = Seen(housing.Plan.Shell.Footprint);
            Region[] strokes = [.. lines.Select(line => Seen(line.Strokes))];
            templates.Add(new Template(
                below ? LabelFile : LabelInsideFile,
                below ? "label on the outer floor, as read from below" : "lettering inside the tub, seen from the front",
                ["The outer line is the housing; the letters have the size and place that they are printed with."],
                floor.Bounds.Grown(Room),
                (sheet, at) =>
                {
                    sheet.Area([floor], at, Stroke.Thin, Fill.None);
                    sheet.Area(strokes, at, Stroke.None, Fill.Solid);
                }));
        }
    }
}
