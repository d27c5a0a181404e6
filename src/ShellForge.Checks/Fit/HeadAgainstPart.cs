using ShellForge.Board.Description;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Hands;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Fit;

/// <summary>A screw head or washer that meets a part or the copper round its hole.</summary>
public sealed class HeadAgainstPart() : Rule(
    Id,
    "Heads and washers of board screws must stay clear of parts, LEDs and the hole's keep-out.",
    "A head that sits on an LED or bridges copper breaks the board at the last turn.",
    "gap in plan between the head's (or washer's) circle and every body of its side that is in its height; 0 stops, 0.5 mm warns; a "
        + "part over the hole itself stops",
    "practice; head and washer sizes from ISO 7045, ISO 4762, ISO 7089")
{
    private const string Id = "head-against-part";
    private const double Wanted = 0.5;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        BoardBody[] parts = [.. BoardBody.Of(housing.Plan)];
        foreach (ScrewJointPlan joint in housing.Plan.Screws.Where(joint => joint.IsInTub))
        {
            double headRadius = Math.Max(joint.Screw.HeadDiameter, joint.Washer ? joint.Screw.WasherDiameter : 0) / 2;
            double rise = joint.Screw.HeadHeight + (joint.Washer ? joint.Screw.WasherThickness : 0);
            BoardSide side = joint.FromFront ? BoardSide.Top : BoardSide.Bottom;
            double face = joint.FromFront ? joint.SeatZ : housing.Plan.Stack.BoardBottom;
            double far = joint.FromFront ? face + rise : face - rise;
            var at = new Point3(joint.At.X, joint.At.Y, face);
            BoardHole? hole = housing.Board.Board.Holes.FirstOrDefault(hole => hole.At == joint.At);
            string worn = joint.Washer ? "washer" : "head";
            string[] over = hole is null ? [] : [.. housing.Board.Board.Parts.Where(part => IsOver(part, hole)).Select(part => part.Ref)];
            if (over.Length > 0)
            {
                yield return Found(
                    Severity.Stop, joint.Name,
                    $"{HandWords.Listed(over)} {(over.Length == 1 ? "lies" : "lie")} over {hole!.Name} itself: no screw goes through it",
                    -hole.Diameter / 2, 0, at,
                    $"correct the place of {over[0]} or of {hole.Name} ('at:'), or say that nothing holds there ('for: tooling')");
                continue;
            }

            foreach (BoardBody part in parts.Where(
                part => part.Side == side && part.FromZ < Math.Max(face, far) && part.ToZ > Math.Min(face, far)))
            {
                double gap = Math.Round(part.Outline.Distance(joint.At) - headRadius, 3);
                if (gap < Wanted)
                {
                    yield return Found(
                        gap < 0 ? Severity.Stop : Severity.Warn, joint.Name,
                        gap < 0 ? $"its {worn} meets {part.Ref}" : $"its {worn} is {gap:0.00} mm from {part.Ref}", gap, Wanted, at,
                        joint.Washer ? "leave the washers out ('washers: false'), or take a screw with a smaller head ('screw:')"
                            : "take a screw with a smaller head ('screw:'), or one of a thinner thread with its insert");
                }
            }

            double? free = joint.FromFront ? hole?.KeepOutTop : hole?.KeepOutBottom;
            if (free is double diameter && diameter < 2 * headRadius)
            {
                yield return Found(
                    Severity.Warn, joint.Name,
                    $"its {worn} of {2 * headRadius:0.0} mm covers copper outside the free {diameter:0.0} mm of {hole!.Name}",
                    diameter, 2 * headRadius, at, "take a smaller head, or put an insulating washer under it");
            }
        }
    }

    /// <summary>
    /// Whether a body is a part's that lies over a hole with a screw, and this rule tells it: what else it meets there has the same cause.
    /// </summary>
    internal static bool Tells(HousingUnderCheck housing, string body) =>
        !housing.Board.Accepts(Id)
            && housing.Board.Board.Parts.FirstOrDefault(part => body == part.Ref || body == part.Ref + " joint") is { } part
            && housing.Board.Board.Holes.Any(
                hole => IsOver(part, hole) && housing.Plan.Screws.Any(joint => joint.IsInTub && joint.At == hole.At));

    // On either side of the board: the screw has to go through.
    private static bool IsOver(BoardPart part, BoardHole hole) =>
        part.Height != 0 && BoardBody.OutlineOf(part).Distance(hole.At) < hole.Diameter / 2;
}
