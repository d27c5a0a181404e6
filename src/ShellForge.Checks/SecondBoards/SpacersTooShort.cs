using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.SecondBoards;

/// <summary>Two boards on spacers whose parts meet between them.</summary>
public sealed class SpacersTooShort() : Rule(
    "spacers-too-short",
    "Spacers must keep apart what hangs from the LED board and what stands on the second board.",
    "Joints that touch the other board short it, or press through its lacquer after a while.",
    "spacer length less the second board's parts and the highest part or joint over it, wherever on the second board it is; below 0 "
        + "stops, below 0.5 mm warns",
    "practice: half a millimetre between joints and the other board")
{
    private const double Wanted = 0.5;

    // What overlaps in plan by less is beside it, mm: the spread of bodies.
    private const double Spread = 0.2;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        HousingPlan plan = housing.Plan;
        if (plan.Spacers.IsEmpty || housing.Board.Housing.SecondBoard is not { Spacers: double length } second
            || housing.Board.Board.Parts.FirstOrDefault(part => part.OnSpacers) is not { } hung)
        {
            yield break;
        }

        Region outline = BoardBody.OutlineOf(hung);
        (string Who, double Height) highest = BoardBody.Of(plan)
            .Where(body => body.Side == BoardSide.Bottom && body.Ref != hung.Ref
                && CommonWidth.Of(body.Outline.Intersect(outline)) > Spread)
            .Select(body => (body.Ref, plan.Stack.BoardBottom - body.FromZ)).Append(("", 0)).MaxBy(each => each.Item2);
        double gap = Math.Round(length - second.Above - highest.Height, 3);
        if (gap < Wanted)
        {
            string over = highest.Who.Length == 0 ? "the LED board" : string.Create(CultureInfo.InvariantCulture,
                $"{highest.Who} ({highest.Height:0.0} mm)");
            string told = gap < 0
                ? string.Create(CultureInfo.InvariantCulture,
                    $"what stands on it ({second.Above:0.0} mm) meets {over}: {-gap:0.0} mm are missing between the boards")
                : string.Create(CultureInfo.InvariantCulture,
                    $"what stands on it ({second.Above:0.0} mm) has {gap:0.0} mm to {over} between the boards");
            yield return Found(
                gap < 0 ? Severity.Stop : Severity.Warn, "second board",
                told, gap, Wanted, new Point3(hung.At.X, hung.At.Y, plan.Stack.BoardBottom - length),
                string.Create(CultureInfo.InvariantCulture,
                    $"'spacers: {Math.Ceiling(length + Wanted - gap):0}' at the second board, or it turned over or moved"));
        }
    }
}
