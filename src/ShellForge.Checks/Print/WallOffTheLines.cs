using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Print;

/// <summary>A wall that is too thin, or no whole number of lines.</summary>
public sealed class WallOffTheLines() : Rule(
    "wall-off-the-lines",
    "Outer walls are at least 0.8 mm and a whole number of lines of plastic.",
    "A slicer fills what is left between lines with jittery strokes: weak, and bright streaks when lit from behind.",
    "n lines make width + (n - 1) x (width - 0.215 x layer height); 0.1 mm off the nearest warns for walls of up to 4 lines",
    "the stadium cross-section that slicers plan with; 0.8 mm as least wall from print services' tables")
{
    private const double LeastWall = 0.8;
    private const double Off = 0.10;
    private const int LinesThatShow = 4;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        PrintBasis basis = PrintBasis.Of(housing.Board.Print);
        double wall = housing.Plan.Shell.Wall;
        Point3 at = Place(housing.Plan);
        if (wall < LeastWall)
        {
            yield return Found(Severity.Stop, PartNames.Tub, $"a wall of {wall:0.00} mm is too thin to hold", wall, LeastWall, at,
                "ask for at least 2 lines: 'walls: 2'");
            yield break;
        }

        int lines = housing.Plan.Shell.WallLines;
        double off = Math.Abs(wall - basis.Wall(Math.Max(1, lines)));
        if (off > Off && lines <= LinesThatShow)
        {
            yield return Found(
                Severity.Warn, PartNames.Tub, $"a wall of {wall:0.00} mm misses {lines} whole lines by {off:0.00} mm", off, Off, at,
                $"ask for lines instead of a thickness: 'walls: {lines}' makes {basis.Wall(lines):0.00} mm");
        }
    }

    private static Point3 Place(HousingPlan plan)
    {
        Point2 corner = plan.Shell.Footprint.Loops[0][0];
        return new Point3(corner.X, corner.Y, plan.Stack.PartingLine / 2);
    }
}
