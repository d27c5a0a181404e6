using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Checks.Fit;

/// <summary>A screw hole with little of the board between it and an edge.</summary>
public sealed class HoleNearEdge() : Rule(
    "hole-near-edge",
    "Between a screw's hole and the edge of the board, its bore or a cutout there must be enough laminate for the head to press on.",
    "A narrow web breaks out when the screw is tightened, and a head that stands over the edge presses on half of its face.",
    "distance from the hole's axis to the outline less the hole's radius; less than 1 mm is a note, less than 0.5 mm warns; how far the "
        + "screw's head stands over the edge is told with it",
    "typical: board houses route no nearer to a hole than 0.5 mm, and advise 1 mm for screws")
{
    private const double Firm = 1.0;
    private const double Frail = 0.5;

    // A head that stands out less is not worth a word, mm.
    private const double HeadOut = 0.3;

    // Chords of a round edge, mm.
    private const double Chords = 0.01;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        Region board = housing.Board.Board.Outline.Region;
        foreach (BoardHole hole in housing.Board.Board.Holes.Where(hole => hole.For == HolePurpose.Mount))
        {
            double toEdge = board.DistanceToOutline(hole.At);
            double web = Math.Round(toEdge - (hole.Diameter / 2), 2);
            if (web >= Firm - Chords || housing.Plan.Screws.FirstOrDefault(joint => joint.At == hole.At) is not { } joint)
            {
                continue;
            }

            double head = Math.Round((joint.Screw.HeadDiameter / 2) - toEdge, 1);
            bool frail = web < Frail - Chords;
            yield return Found(
                frail ? Severity.Warn : Severity.Note, hole.Name,
                web <= 0 ? "it runs out into the edge of the board"
                    : string.Create(CultureInfo.InvariantCulture, $"only {web:0.00} mm of the board are left beside it")
                        + (head > HeadOut
                            ? string.Create(CultureInfo.InvariantCulture, $", and the screw's head stands {head:0.0} mm over the edge")
                            : ""),
                web, frail ? Frail : Firm, new Point3(hole.At.X, hole.At.Y, housing.Plan.Stack.BoardTop),
                "tighten it by hand until it holds, no more; a later board has the hole farther in");
        }
    }
}
