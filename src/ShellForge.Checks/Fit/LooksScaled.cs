using ShellForge.Board.Description;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Fit;

/// <summary>An outline in another unit than what lies on it.</summary>
public sealed class LooksScaled() : Rule(
    "looks-scaled",
    "Outline and what lies on it must be of one unit.",
    "An outline taken for inches comes out 25.4 times too large; the first sign is a part that fits a shoe box.",
    "reach of holes, LEDs and parts, connectors at the edge aside, over the outline's radius; below a fifth stops",
    "hand-over files without units; drill and outline of one board fill the same box")
{
    private const double Share = 0.2;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        CircuitBoard board = housing.Board.Board;
        double[] reaches =
        [
            .. board.Holes.Select(hole => hole.At.Length),
            .. board.PixelCircles.SelectMany(circle => circle.Pixels).Select(pixel => pixel.At.Length),
            .. board.Parts.Where(part => !BoardBody.IsAtEdge(part))
                .Select(part => BoardBody.OutlineOf(part).Loops.SelectMany(loop => loop).Max(point => point.Length)),
        ];
        double outline = board.Outline.OuterRadius;
        if (reaches.Length > 1 && reaches.Max() < Share * outline)
        {
            yield return Found(
                Severity.Stop, PartNames.Board,
                $"everything on it lies within {reaches.Max():0.0} mm of the middle, its edge at {outline:0.0} mm: the outline seems "
                    + $"to be in another unit",
                reaches.Max() / outline, Share, new Point3(outline, 0, housing.Plan.Stack.BoardBottom),
                "check the unit of the outline against one length that you measure", "");
        }
    }
}
