using ShellForge.Board.Description;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Fit;

/// <summary>A connector too far behind the face that stops the plug.</summary>
public sealed class PlugDoesNotSeat() : Rule(
    Id,
    "A plug must reach its connector before its overmould meets the wall or the edge of the board.",
    "A receptacle 2 mm behind the wall is a ruined print: the plug wobbles, does not latch, or cannot be pulled.",
    "distance from the connector's mouth to the face that the overmould touches first, the wall's or recess's, or the board's own edge "
        + "where the overmould is thicker than the connector's axis is high; against the mouth's profile (warn and stop)",
    "connector drawings as listed in the package profile")
{
    private const string Id = "plug-does-not-seat";

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        foreach (PortPlan port in housing.Plan.Ports)
        {
            double warn = port.Mouth.SeatDepthWarn;
            double stop = port.Mouth.SeatDepthStop;
            (double behind, bool board) = Behind(housing, port);
            if (behind > warn)
            {
                Point2 at = port.Face + Point2.Polar(behind, port.Faces);
                yield return Found(
                    behind > stop ? Severity.Stop : Severity.Warn, port.Ref,
                    $"its mouth lies {behind:0.00} mm behind the {(board ? "board's edge" : "face")} that the plug's overmould meets",
                    behind, behind > stop ? stop : warn, new Point3(at.X, at.Y, port.AxisZ),
                    board
                        ? "move the connector outward on the board ('past-edge:'), or cut the board's edge back in front of it"
                        : "move the connector outward on the board ('past-edge:'), thin the wall, or widen the recess to the overmould");
            }
        }
    }

    /// <summary>Whether a plug is stopped far from its mouth: what else it would meet on the way is of no interest.</summary>
    internal static bool Stops(HousingUnderCheck housing, PortPlan port) =>
        !housing.Board.Accepts(Id) && Behind(housing, port).Depth > port.Mouth.SeatDepthStop;

    // How far the mouth lies behind what stops the overmould, and whether that is the board.
    private static (double Depth, bool ByBoard) Behind(HousingUnderCheck housing, PortPlan port)
    {
        double byBoard = BehindBoard(housing, port);
        return (Math.Round(Math.Max(port.MouthBehind, byBoard), 3), byBoard > port.MouthBehind);
    }

    // How far the laminate stands out past the mouth within the overmould's width, where the overmould is thick enough to meet it.
    private static double BehindBoard(HousingUnderCheck housing, PortPlan port)
    {
        double half = port.Mouth.PlugHeight / 2;
        StackPlan stack = housing.Plan.Stack;
        if (port.AxisZ + half <= stack.BoardBottom || port.AxisZ - half >= stack.BoardTop)
        {
            return 0;
        }

        const double far = 60;
        Point2 along = Point2.Polar(1, port.Faces);
        Region way =
            Region.Rectangle(new Point2(0, -port.Mouth.PlugWidth / 2), new Point2(far, port.Mouth.PlugWidth / 2)).Turned(port.Faces)
                .Moved(port.Face);
        BoardOutline outline = housing.Board.Board.Outline;
        Region before = outline.Region.Intersect(way);

        // Chords of a round edge lie outside of it: their corners are drawn in to where the edge is.
        Point2 OnEdge(Point2 point) => point.Length > outline.OuterRadius ? outline.OuterRadius / point.Length * point : point;
        return before.IsEmpty ? 0 : before.Loops.SelectMany(loop => loop).Max(point => Point2.Dot(OnEdge(point) - port.Face, along));
    }
}
