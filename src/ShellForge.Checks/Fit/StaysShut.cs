using ShellForge.Board.Description;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Hands;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Fit;

/// <summary>A housing that does not open again, and what is shut in that hands want again.</summary>
public sealed class StaysShut() : Rule(
    "stays-shut",
    "A housing whose cover does not come off again shuts in whatever hands want again.",
    "A module that wants other firmware, or a button, is then got at by breaking the print.",
    "closures that do not reopen; modules whose own connector has no opening, and switches and buttons inside the wall, turn the note "
        + "into a warning",
    "counted from the plan")
{
    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        if (housing.Plan.Closure.Reopens)
        {
            yield break;
        }

        string[] shutIn = [.. housing.Board.Board.Parts.Where(part => IsWantedAgain(housing.Plan, part)).Select(part => part.Ref)];
        yield return new Finding
        {
            Rule = Name,
            Severity = shutIn.Length > 0 ? Severity.Warn : Severity.Note,
            Subject = PartNames.Cover,
            Message = shutIn.Length > 0
                ? $"the cover does not come off again, and {HandWords.Listed(shutIn)} {(shutIn.Length == 1 ? "is" : "are")} shut in"
                : "the cover does not come off again",
            Measured = shutIn.Length > 0 ? shutIn.Length : null,
            At = new Point3(0, 0, housing.Plan.Stack.PartingLine),
            Remedy = shutIn.Length > 0 ? "'closure: snap' or 'closure: screws', or 'port: open' at what hands want again"
                : "try everything before you close it",
        };
    }

    private static bool IsWantedAgain(HousingPlan plan, BoardPart part) =>
        plan.ShutsIn(part) || ControlOutOfReach.IsShutIn(plan, part);
}
