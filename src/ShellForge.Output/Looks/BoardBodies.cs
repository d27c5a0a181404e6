using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;

namespace ShellForge.Output.Looks;

/// <summary>A body of the populated board, for pictures.</summary>
/// <param name="Name">Designator, or "board".</param>
/// <param name="Mesh">The body where it sits in the assembled housing.</param>
/// <param name="Colour">Colour as <c>#rrggbb</c>.</param>
public sealed record BoardMesh(string Name, Mesh Mesh, string Colour);

/// <summary>The populated board as simple bodies: the laminate with its holes, a box or cylinder a part, a box an LED.</summary>
public static class BoardBodies
{
    private const string LaminateColour = "#1f5d3a";
    private const string PartColour = "#3a3a3a";
    private const string ConnectorColour = "#b8b8b8";
    private const string LedColour = "#f4f4ec";
    private const string SecondBoardColour = "#23597a";

    // What stands on a second board is drawn so far in from its edge, mm.
    private const double OnSecondBoard = 2;

    /// <summary>All bodies that have a height, in the order of the board file.</summary>
    public static ImmutableArray<BoardMesh> Of(HousingPlan plan)
    {
        CircuitBoard board = plan.Source.Board;
        var bodies = ImmutableArray.CreateBuilder<BoardMesh>();
        Region laminate = board.Outline.Region.Less(Region.Union(board.Holes.Select(hole => SimpleMesh.Disc(hole.At, hole.Diameter))));
        bodies.Add(new BoardMesh(PartNames.Board, SimpleMesh.Upright(laminate, plan.Stack.BoardBottom, plan.Stack.BoardTop),
            LaminateColour));
        foreach (PixelCircle circle in board.PixelCircles)
        {
            foreach (Pixel pixel in circle.Pixels)
            {
                Region body = Seen(circle, pixel);
                bodies.Add(new BoardMesh(
                    pixel.Ref, SimpleMesh.Upright(body, plan.Stack.BoardTop, plan.Stack.BoardTop + circle.Led.Height), LedColour));
            }
        }

        foreach (BoardPart part in board.Parts)
        {
            if (part.Height is { } height && height > part.Lift)
            {
                Region body = Seen(part);
                (double from, double to) = part.Side == BoardSide.Top
                    ? (plan.Stack.BoardTop + part.Lift, plan.Stack.BoardTop + height)
                    : (plan.Stack.BoardBottom - height, plan.Stack.BoardBottom - part.Lift);
                bodies.Add(new BoardMesh(part.Ref, SimpleMesh.Upright(body, from, to), part.Mouth is null ? PartColour : ConnectorColour));
            }
        }

        if (plan.SecondBoard is { } second)
        {
            // Bodies of one name are one to people: the laminate, and a box for what stands on it.
            Mesh seen = SimpleMesh.Upright(second.Outline, second.Seat, second.Top);
            Region on = second.Placed(second.Size.Outline.Offset(-OnSecondBoard));
            seen = second.Board.Above > 0 && !on.IsEmpty
                ? Mesh.Joined([seen, SimpleMesh.Upright(on, second.Top, second.Highest)]) : seen;
            bodies.Add(new BoardMesh(PartNames.SecondBoard, seen, SecondBoardColour));
        }

        return bodies.ToImmutable();
    }

    /// <summary>A part seen along the axis.</summary>
    internal static Region Seen(BoardPart part) =>
        part.Round ? SimpleMesh.Disc(part.At, part.Length) : Box(part.Length, part.Width, part.Rotation, part.At);

    /// <summary>An LED seen along the axis.</summary>
    internal static Region Seen(PixelCircle circle, Pixel pixel) =>
        Box(circle.Led.Length, circle.Led.Width, pixel.Rotation, pixel.At);

    private static Region Box(double length, double width, Angle rotation, Point2 at)
    {
        Point2 half = new(length / 2, width / 2);
        return Region.Rectangle(-1 * half, half).Turned(rotation).Moved(at);
    }
}
