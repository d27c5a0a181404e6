using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Holding;

/// <summary>A board's rim that slips out from under the ring or the hooks that hold it.</summary>
public sealed class RimSlipsOut() : Rule(
    "rim-slips-out",
    "A clamp ring or clips must still reach over the rim where the board lies against the wall across.",
    "The board rattles loose in its bag: on one side it has slid out from under what holds it.",
    "how far the part as made reaches over the outline, in the sections just above the board, at each side that it lies on, less the gap "
        + "to the wall as made; below 0 stops, below 0.2 mm warns",
    "practice; spread of a routed outline 0.2 mm (board houses' tables)")
{
    private const double Wanted = 0.2;

    // A ring lies on the board, hooks rise from beside it: they are looked at up to this over its face, mm.
    private const double Over = 3;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        HousingPlan plan = housing.Plan;
        if (plan.Hold.Holder is not { } holder || housing.Part(holder.Part) is not { } part || housing.Part(PartNames.Tub) is not { } tub)
        {
            yield break;
        }

        Region board = housing.Board.Board.Outline.Region.Filled();
        double top = plan.Stack.BoardTop;
        Region over = Region.Union(housing.SectionsOf(part).Where(slab => slab.ToZ > top && slab.FromZ < top + Over)
            .Select(slab => slab.Outline.Intersect(board)));
        Region beside = Region.Union(housing.SectionsOf(tub).Where(slab => slab.FromZ < top && slab.ToZ > plan.Stack.BoardBottom + Hair)
            .Select(slab => slab.Outline));
        double play = beside.IsEmpty ? 0 : board.Distance(beside);
        foreach (Region piece in over.Parts.Where(piece => piece.Area > Crumb))
        {
            Point2 deepest = piece.Loops.SelectMany(loop => loop).MaxBy(board.DistanceToOutline);
            double left = Math.Round(board.DistanceToOutline(deepest) - play, 3);
            if (left < Wanted)
            {
                yield return Found(
                    left < 0 ? Severity.Stop : Severity.Warn, PartNames.Board,
                    left < 0
                        ? $"it slips out from under {holder.NameOf(0)} by {-left:0.00} mm where it lies against the wall across"
                        : $"{holder.NameOf(0)} keeps {left:0.00} mm of it where it lies against the wall across",
                    left, Wanted, new Point3(deepest.X, deepest.Y, top),
                    "a smaller 'clearance: {board-edge: ...}', or parts farther from the rim, which widen the gap round the board");
                yield break;
            }
        }
    }

    // Sections that end this near to a face lie at it, mm; what is smaller than this is no hold, mm2.
    private const double Hair = 0.01;
    private const double Crumb = 0.1;
}
