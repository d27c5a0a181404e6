using ShellForge.Board.Description;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Cables;

/// <summary>A round cable that has to bend more sharply than it bears.</summary>
public sealed class CableBendsTooTight() : Rule(
    "cable-bends-too-tight",
    "Between its relief and its solder joints the leads of a cable must not bend more sharply than four times the diameter of one.",
    "A lead kinked inside the wall works its joint loose, and breaks at the first pull.",
    "two equal arcs from the exit's height to the board over the way in plan: radius = (way^2 + rise^2) / (4 rise), against 4 x the "
        + "diameter of one lead over its insulation (less than one stops: a lead kinks; above, it may still be laid in a loop): the "
        + "jacket ends at its tie or knot",
    "4 x outside diameter for what is fixed: common norm for data cables")
{
    private const double Wanted = 4;
    private const double Least = 1;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        foreach (WireLead wire in housing.Board.Board.Wires)
        {
            if (housing.Plan.ExitOf(wire) is not { } exit)
            {
                continue;
            }

            double joint = wire.Side == BoardSide.Bottom ? housing.Plan.Stack.BoardBottom : housing.Plan.Stack.BoardTop;
            LeadBend bend = exit.Bend(new Point3(wire.At.X, wire.At.Y, joint));
            double radius = bend.Radius;
            double lead = Math.Min(wire.Diameter, exit.CableDiameter);
            double wanted = Wanted * lead;
            if (radius < wanted)
            {
                yield return Found(
                    radius < Least * lead ? Severity.Stop : Severity.Warn, wire.Name,
                    $"between exit and solder joints its leads bend to a radius of {radius:0.0} mm; leads of {lead:0.0} mm need "
                        + $"{wanted:0.0}", radius, wanted,
                    bend.At,
                    "lay the leads in a loop round the board, solder them farther from the exit, take thinner ones, or turn the exit to "
                        + "another side ('cable: {angle: ...}')");
            }
        }
    }
}
