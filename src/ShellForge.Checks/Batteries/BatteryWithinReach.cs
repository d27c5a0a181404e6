using System.Collections.Immutable;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Batteries;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Batteries;

/// <summary>A battery that something pushed in through an opening meets.</summary>
public sealed class BatteryWithinReach() : Rule(
    "battery-within-reach",
    "No opening of your own may lead straight to the battery.",
    "A screwdriver or a wire pushed in through a hole pierces or shorts the cell, and a pierced cell burns.",
    "straight lines through the opening, followed to the bay's wall, to the first part of the board or to the battery at its largest",
    "practice: nothing sharp towards a cell")
{
    // Lines are followed in steps, mm, as far as a screwdriver reaches.
    private const double Step = 0.25;
    private const double Far = 120;

    // Outlines of bay and cells are worked out once.
    private sealed record InTheWay(BatteryBayPlan Bay, Region Outline, ImmutableArray<Region> Cells, BoardBody[] Bodies);

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        if (housing.Plan.Bay is not { } bay)
        {
            yield break;
        }

        var way = new InTheWay(bay, bay.Outline, bay.Bodies, [.. BoardBody.Of(housing.Plan)]);
        foreach (OwnOpeningPlan opening in housing.Plan.Openings.OfType<OwnOpeningPlan>())
        {
            Point3[] met = [.. SightLines.Through(opening).Select(line => Meets(housing, way, line)).OfType<Point3>()];
            if (met.Length > 0)
            {
                yield return Found(
                    Severity.Stop, opening.Ref, "what is pushed in through this opening meets the battery", met.Length, 0, met[0],
                    $"{opening.Elsewhere}, or another place for the battery ('battery: {{at: ...}}')", "");
            }
        }
    }

    private static Point3? Meets(HousingUnderCheck housing, InTheWay thing, (Point3 Outside, Point3 Inside) line)
    {
        Point3 way = line.Inside - line.Outside;
        double length = Point3.Distance(line.Inside, line.Outside);
        BatteryBayPlan bay = thing.Bay;
        for (double along = 0; along < Far; along += Step)
        {
            Point3 at = line.Outside + (along / length * way);
            if (at.Z >= bay.Seat && at.Z <= bay.Top && thing.Cells.Any(cell => cell.Contains(at.XY)))
            {
                return at;
            }

            bool stops = (at.Z >= bay.FloorTop && at.Z <= bay.Rim && thing.Outline.Contains(at.XY))
                || (at.Z >= housing.Plan.Stack.BoardBottom && at.Z <= housing.Plan.Stack.BoardTop
                    && housing.Board.Board.Outline.Region.Contains(at.XY))
                || thing.Bodies.Any(body => at.Z >= body.FromZ && at.Z <= body.ToZ && body.Outline.Contains(at.XY));
            if (stops)
            {
                return null;
            }
        }

        return null;
    }
}
