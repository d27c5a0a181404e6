using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Fit;

/// <summary>A housing that stands on a foot of its own and tips over.</summary>
public sealed class StandTips() : Rule(
    "stand-tips",
    "The centre of mass of housing, boards, battery and stand must stand well over the stand's foot.",
    "A lamp that falls at the first touch of its cable breaks, or lies on what it lights.",
    "angle by which it can be tilted before its centre of mass, from the solids as made and the board's laminate, passes the nearest edge "
        + "of the foot's hull; below 8 degrees warns, below 3 stops",
    "typical: furniture bears 10 degrees; the plan aims at 12")
{
    private const double Wanted = 8;
    private const double Least = 3;

    // Parts printed with infill weigh about as their outside says where walls are a few lines thick. Laminate with parts on it: typical,
    // g/cm3.
    private const double BoardDensity = 2.6;

    // Of a cubic centimetre, in which densities count.
    private const double CubicMillimetres = 1000;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        if (housing.Plan.Mount?.Standing is not { } standing)
        {
            yield break;
        }

        Point3 centre = standing.ToTable.Apply(CentreOf(housing));
        Region foot = standing.Foot.Hull();
        double inside = foot.Contains(centre.XY) ? foot.DistanceToOutline(centre.XY) : -foot.Distance(centre.XY);
        double angle = Math.Round(Angle.Of(new Point2(centre.Z, Math.Abs(inside))).Degrees * Math.Sign(inside), 1);
        if (angle < Wanted)
        {
            yield return Found(
                angle < Least ? Severity.Stop : Severity.Warn, PartNames.Stand,
                angle <= 0 ? "on its stand the housing falls over: its centre of mass lies beside the foot"
                    : $"on its stand the housing falls over when it is tilted by {angle:0.0} degrees",
                angle, Wanted, CentreOf(housing), "mount: keyhole or feet, or a flatter housing", "degrees");
        }
    }

    private static Point3 CentreOf(HousingUnderCheck housing)
    {
        StackPlan stack = housing.Plan.Stack;
        Region board = housing.Board.Board.Outline.Region;
        var bodies = housing.SoundParts.Where(part => part.AssembledMesh.TriangleCount > 0)
            .Select(part => (Mass: Measure.Volume(part.AssembledMesh) * part.Plan.Filament.Density,
                At: Measure.Centroid(part.AssembledMesh)))
            .Append((board.Area * housing.Board.Board.Thickness * BoardDensity,
                new Point3(board.Bounds.Centre.X, board.Bounds.Centre.Y, stack.BoardBottom)))
            .Concat(housing.Plan.Bay is { } bay
                ? [(bay.Size.Grams * CubicMillimetres, bay.Middle)] : [])
            .Concat(housing.Plan.SecondBoard is { } second
                ? [(second.Board.Grams * CubicMillimetres, second.Middle)] : [])
            .Concat(housing.Board.Board.Parts.Where(part => part.Grams is not null).Select(part =>
                (part.Grams!.Value * CubicMillimetres, new Point3(part.At.X, part.At.Y, stack.BoardBottom - part.Height ?? 0))))
            .ToArray();
        double mass = bodies.Sum(body => body.Item1);
        return bodies.Aggregate(default(Point3), (sum, body) => sum + (body.Item1 / mass * body.Item2));
    }
}
