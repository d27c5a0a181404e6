using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Draft;

namespace ShellForge.Planning;

/// <summary>
/// What the board is, as the plan takes it: its revision, what was measured, where things lie. So a later report can name what moved.
/// </summary>
internal static class BoardTold
{
    private const string InFile = "in the file's coordinates";

    /// <summary>Tells all of it.</summary>
    public static void Tell(BoardFile file, Reasons reasons)
    {
        if (file.Revision.Length > 0)
        {
            reasons.Choice("board.revision", file.Revision, Reasons.Origin(file, "revision"),
                "the mark inside tub and cover, where it has a place");
        }

        foreach (MeasuredSize size in file.Measured)
        {
            string otherwise = size.Nominal is { } nominal ? $"; nominal {Reasons.Mm(nominal)}" : "";
            reasons.Length(size.Path, size.Value, Reasons.Origin(file, size.Path), $"{size.What}, {size.How}{otherwise}");
        }

        CircuitBoard board = file.Board;
        reasons.Choice("board.outline", OutlineOf(board.Outline), Reasons.Origin(file, "board.outline"), "seen from the LED side");
        reasons.Length("board.thickness", board.Thickness, Reasons.Origin(file, "board.thickness"), "of the laminate");
        foreach (BoardHole hole in board.Holes)
        {
            reasons.Choice($"board.{hole.Name.Replace(' ', '-')}", $"{Place(hole.At, board)}, {Reasons.Mm(hole.Diameter)} wide",
                Reasons.Origin(file, hole.Path), InFile);
        }

        // Patterns are one line: their first part, and how many there are.
        foreach (IGrouping<string, BoardPart> entry in board.Parts.GroupBy(part => part.Path.Length > 0 ? part.Path : part.Ref))
        {
            BoardPart first = entry.First();
            int count = entry.Count();
            string many = count == 1 ? "" : string.Create(CultureInfo.InvariantCulture, $", the first of {count}");
            string side = first.Side == BoardSide.Top ? "top" : "bottom";
            reasons.Choice($"board.{first.Ref}",
                $"{Place(first.At, board)}, {side}, turned {Reasons.Mm(first.Rotation.Degrees)}{many}",
                Reasons.Origin(file, first.Path), InFile);
        }

        for (int i = 0; i < board.PixelCircles.Length; i++)
        {
            PixelCircle circle = board.PixelCircles[i];
            if (!circle.Pixels.IsEmpty)
            {
                reasons.Choice(string.Create(CultureInfo.InvariantCulture, $"board.leds-{i + 1}"),
                    string.Create(CultureInfo.InvariantCulture, $"{circle.Pixels.Length} of {circle.Led.Name}, {circle.Pixels[0].Ref} at ")
                        + Place(circle.Pixels[0].At, board),
                    Reasons.Origin(file, "board.pixels"), InFile);
            }
        }
    }

    private static string OutlineOf(BoardOutline outline) => outline switch
    {
        RingOutline ring => $"ring {Reasons.Mm(ring.OuterDiameter)} / {Reasons.Mm(ring.BoreDiameter)}",
        DiscOutline disc => $"disc {Reasons.Mm(disc.Diameter)}",
        _ => $"{Reasons.Mm(outline.Region.Bounds.Size.X)} x {Reasons.Mm(outline.Region.Bounds.Size.Y)}, "
            + $"{Math.Round(outline.Region.Area).ToString(CultureInfo.InvariantCulture)} mm2",
    };

    // In the coordinates of the file, where the maker looks it up.
    private static string Place(Point2 at, CircuitBoard board)
    {
        Point2 inFile = at + board.FileCentre;
        return $"x {Reasons.Mm(inFile.X + 0)}, y {Reasons.Mm(inFile.Y + 0)}";
    }
}
