using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;

namespace ShellForge.Checks.SecondBoards;

/// <summary>A driver that mains reaches, in a printed housing.</summary>
public sealed class SecondBoardByMains() : Rule(
    "second-board-by-mains",
    "No board that mains reaches may lie in the housing.",
    "Printed plastic burns, cracks and is no tested insulation: a fault makes the lamp live or sets it on fire.",
    "said in the board file ('mains: true')",
    "local electrical codes; work on mains is a licensed electrician's")
{
    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        if (housing.Board.Housing.SecondBoard is { Mains: true })
        {
            yield return Found(
                Severity.Stop, "second board", "mains reaches it, and this housing is no insulation against mains", 1, 0,
                SecondBoardPlaces.Middle(housing),
                "a certified low-voltage driver outside the housing; mains work is a licensed electrician's, by local codes", "");
        }
    }
}
