using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;
using ShellForge.Planning.SecondBoards;

namespace ShellForge.Checks.SecondBoards;

/// <summary>A spacer that meets what is beside its hole on the LED board's back.</summary>
public sealed class SpacerAgainstPart() : Rule(
    "spacer-against-part",
    "Spacers must stay clear of parts and joints on the LED board's back.",
    "A brass spacer on a joint shorts it, and one on a part's body stands at a slant.",
    "gap in plan between the circle over the spacer's corners and every body on the back; 0 stops, 0.25 mm warns",
    "typical hexagonal spacers: 4 mm over flats for M2, 5 for M2.5, 5.5 for M3, 7 for M4; check yours")
{
    private const double Wanted = 0.25;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        HousingPlan plan = housing.Plan;
        BoardBody[] bodies = plan.Spacers.IsEmpty ? []
            : [.. BoardBody.Of(plan).Where(body => body.Side == BoardSide.Bottom && body.Ref != SecondBoardSpec.WireWord)];
        foreach (SpacerPlan spacer in plan.Spacers)
        {
            BoardBody? near = bodies.MinBy(body => body.Outline.Distance(spacer.At));
            double gap = near is null ? double.PositiveInfinity
                : Math.Round(near.Outline.Distance(spacer.At) - (spacer.Diameter / 2), 3);
            if (gap < Wanted)
            {
                yield return Found(
                    gap < 0 ? Severity.Stop : Severity.Warn, spacer.Hole,
                    gap < 0
                        ? string.Create(CultureInfo.InvariantCulture,
                            $"its spacer, {spacer.Diameter:0.0} mm over corners, meets {near!.Ref}")
                        : string.Create(CultureInfo.InvariantCulture, $"its spacer has {gap:0.00} mm to {near!.Ref}"),
                    gap, Wanted, new Point3(spacer.At.X, spacer.At.Y, plan.Stack.BoardBottom),
                    "a thinner thread at this hole ('screw:'), or the hole or the part elsewhere on the board");
            }
        }
    }
}
