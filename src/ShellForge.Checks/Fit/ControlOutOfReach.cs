using ShellForge.Board.Description;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Fit;

/// <summary>A switch or push button that no finger comes to.</summary>
public sealed class ControlOutOfReach() : Rule(
    "control-out-of-reach",
    "A switch or push button needs a way for a finger: over the board's edge and its wall, or through the front.",
    "Shut in, it can be used only with the housing open, which is found out after the last screw.",
    "switches and buttons, told by their package, whose body ends inside the outer wall",
    "counted from the plan: walls, floor and front have openings for plugs only")
{
    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        foreach (BoardPart control in housing.Board.Board.Parts.Where(part => IsShutIn(housing.Plan, part)))
        {
            double z = control.Side == BoardSide.Bottom ? housing.Plan.Stack.BoardBottom : housing.Plan.Stack.BoardTop;
            yield return new Finding
            {
                Rule = Name,
                Severity = Severity.Note,
                Subject = control.Ref,
                Message = "this switch or button is shut in: the closed housing has no way to it",
                At = new Point3(control.At.X, control.At.Y, z),
                Remedy = "use it before closing, wire a button of your own to a place outside, or accept it with the reason",
            };
        }
    }

    /// <summary>Whether a part is a switch or button that no finger comes to.</summary>
    internal static bool IsShutIn(HousingPlan plan, BoardPart part) =>
        part.Package?.Name.StartsWith("switch-", StringComparison.Ordinal) == true
        && plan.Shell.Footprint.Filled().Contains(PartEnvelope.OutlineOf(part));
}
