using ShellForge.Board.Description;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;

namespace ShellForge.Checks.SecondBoards;

/// <summary>A second board that nothing on the LED board is wired to.</summary>
public sealed class SecondBoardWithoutLeads() : Rule(
    "second-board-without-leads",
    "Wires must join the second board to the LED board.",
    "Wires that nobody planned have no room to bend: they lie pinched under the board or are torn off.",
    "leads of the LED board that go to the second board, counted from the board file",
    "counted from the board file")
{
    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        if (housing.Plan.SecondBoard is { } second
            && housing.Board.Board.Wires.All(wire => wire.To != SecondBoardSpec.WireWord))
        {
            yield return Found(
                Severity.Warn, "second board", "no wire of the LED board goes to it", 0, 1, second.Middle,
                $"'to: {SecondBoardSpec.WireWord}' at one of the 'wires' of the board, with its conductors and gauge", "");
        }
    }
}
