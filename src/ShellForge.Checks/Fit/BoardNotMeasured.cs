using ShellForge.Board.Description;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Fit;

/// <summary>A ring whose bore nobody has measured.</summary>
public sealed class BoardNotMeasured() : Rule(
    "board-not-measured",
    "A ring whose bore stays open should be measured before its housing is printed.",
    "Rings of one name from two sellers differ by 1.9 mm in the bore: the wall round it then does not pass.",
    "gap between bore and bore wall against 0.95 mm, half of what the bores of two sellers differ by; asked of rings whose bore is not "
        + "among their 'measured:' sizes",
    "sizes of rings of one name from two sellers, 16 and 17.9 mm")
{
    private const double HalfOfSpread = 0.95;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        if (housing.Board.Board is { BoreMeasured: false, Outline: RingOutline ring }
            && housing.Plan.Shell.Round is { HasBore: true } round)
        {
            double gap = ring.BoreRadius - round.BoreOuter;
            if (gap < HalfOfSpread)
            {
                yield return Found(
                    Severity.Note, PartNames.Board,
                    $"the bore of {ring.BoreDiameter:0.0} mm is not measured; rings sold under one name differ by more than the gap "
                        + $"of {gap:0.00} mm allows",
                    gap, HalfOfSpread, new Point3(round.BoreOuter, 0, housing.Plan.Stack.BoardBottom),
                    "measure your board and write 'measured: {outer: ..., bore: ...}'");
            }
        }
    }
}
