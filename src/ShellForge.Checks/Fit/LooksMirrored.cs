using ShellForge.Board.Description;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Checks.Fit;

/// <summary>A bottom side that was read as seen from below.</summary>
public sealed class LooksMirrored() : Rule(
    "looks-mirrored",
    "Parts on the back must lie clear of mounting holes and edges as given, not only when mirrored.",
    "Placement lists of the back come mirrored from some layout programs, or with y counted downward: every boss then stands where a part is.",
    "bodies on the back that stand on a mounting hole's screw, in each other, or over the edge, as given and mirrored in x or y: some as "
        + "given, none mirrored",
    "known faults of placement lists; confirm with one part that lies off the middle")
{
    private const double ScrewRoom = 2.0;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        CircuitBoard board = housing.Board.Board;
        HashSet<string> byEdge = [.. board.Parts.Where(BoardBody.IsAtEdge).Select(part => part.Ref)];
        BoardBody[] back =
        [
            .. BoardBody.Of(housing.Plan).Where(body =>
                body.Side == BoardSide.Bottom && !body.IsJoint && !byEdge.Contains(body.Ref)),
        ];
        BoardBody[] asGiven = [.. Conflicts(board, back, body => body.Outline)];
        if (asGiven.Length == 0)
        {
            yield break;
        }

        // Two mirrorings differ by half a turn: where both would be clear, parts seen from below are the commoner.
        bool x = !Conflicts(board, back, body => body.Outline.MirroredX()).Any();
        if (x || !Conflicts(board, back, body => body.Outline.MirroredX().Turned(Angle.FromDegrees(180))).Any())
        {
            BoardBody first = asGiven[0];
            yield return Found(
                Severity.Warn, first.Ref,
                $"{asGiven.Length} of {back.Length} parts on the back stand on holes or over the edge as given, and none would mirrored: "
                    + $"the list "
                    + (x ? "may be seen from below" : "may count y downward"),
                asGiven.Length, 0, first.FarPoint,
                $"mirror the back's placements in {(x ? "x (x to -x)" : "y (y to -y)")}, then confirm one part that lies off the "
                    + $"middle", "");
        }
    }

    // Connectors stand over the edge on purpose.
    private static IEnumerable<BoardBody> Conflicts(CircuitBoard board, BoardBody[] back, Func<BoardBody, Region> outline)
    {
        Region laminate = board.Outline.Region;
        HashSet<string> connectors = [.. board.Parts.Where(part => part.Mouth is not null).Select(part => part.Ref)];
        return back.Where(
            body => board.Holes.Any(
                hole => hole.For == HolePurpose.Mount && outline(body).Distance(hole.At) < Math.Max(ScrewRoom, hole.Diameter / 2))
            || (!connectors.Contains(body.Ref) && !laminate.Contains(outline(body))));
    }
}
