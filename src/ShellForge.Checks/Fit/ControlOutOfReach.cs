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
    "A switch or push button needs a way to it: over the board's edge and its wall, or a hole for a pin.",
    "Shut in, it can be used only with the housing open, which is found out after the last screw.",
    "buttons, told by the pusher of their package, whose body ends inside the outer wall and that no opening is made for",
    "counted from the plan")
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
                Remedy = (control is { Side: BoardSide.Bottom, Port: not PortWish.Open }
                    ? "'port: open' makes a hole for a pin; or " : "")
                    + "use it before closing, wire a button of your own to a place outside, or accept it with the reason",
            };
        }
    }

    /// <summary>Whether a part is a switch or button that nothing comes to.</summary>
    internal static bool IsShutIn(HousingPlan plan, BoardPart part) =>
        part.Package?.Pusher is not null && !plan.Opens(part)
        && plan.Shell.Footprint.Filled().Contains(PartEnvelope.OutlineOf(part));
}
