using ShellForge.Board.Description;
using ShellForge.Board.Diagnostics;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;

namespace ShellForge.Checks;

/// <summary>A value that the board file itself marks as missing or guessed.</summary>
public sealed class StillToSay() : Rule(
    "still-to-say",
    "Everything that the board file marks as still to do must be said.",
    "A housing made of guesses fits no board: without its LEDs it has no light, without its cable no way in.",
    "lines '# TODO path: what' of the board file that no '--set' answers",
    "the file itself: an import writes such a line for whatever the hand-over files do not tell")
{
    /// <inheritdoc />
    /// <remarks>Accepting one would accept them all, also those that a later import writes.</remarks>
    public override bool CanBeAccepted => false;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        foreach (Diagnostic remark in housing.Board.Remarks.Where(remark => remark.Code == Diagnostic.StillToSay))
        {
            yield return new Finding
            {
                Rule = Name,
                Severity = Severity.Stop,
                Subject = "board file",
                Message = remark.Message,
                InFile = new FilePlace(remark.File, remark.Line, remark.Column),
                Remedy = "write the value into the file and delete its TODO line",
            };
        }
    }
}
