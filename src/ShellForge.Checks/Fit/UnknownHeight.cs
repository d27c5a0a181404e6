using ShellForge.Board.Description;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Checks.Fit;

/// <summary>A part whose height nobody knows.</summary>
public sealed class UnknownHeight() : Rule(
    "unknown-height",
    "Every part that can be tall must have a known height.",
    "The standoffs are as high as the tallest part needs; one forgotten electrolytic lifts the whole board off its bosses.",
    "a height is given in the file, or the package profile has one",
    "practice; layout programs write placeholder heights")
{
    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        foreach (BoardPart part in housing.Board.Board.Parts.Where(part => part.Height is null))
        {
            double face = part.Side == BoardSide.Bottom ? housing.Plan.Stack.BoardBottom : housing.Plan.Stack.BoardTop;
            yield return new Finding
            {
                Rule = Name,
                Severity = part.Passive ? Severity.Note : Severity.Stop,
                Subject = part.Ref,
                Message = part.Passive
                    ? "its height is not known; it is taken as a small part, lower than all else here"
                    : $"its height is not known ({part.HeightFrom}), so its room can't be checked",
                At = new Point3(part.At.X, part.At.Y, face),
                Remedy = $"measure it and write 'height:' for {part.Ref}, or name a package that has one",
            };
        }
    }
}
