using ShellForge.Board.Description;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Checks.Fit;

/// <summary>A round cable that has to bend more sharply than it bears.</summary>
public sealed class CableBendsTooTight() : Rule(
    "cable-bends-too-tight",
    "Between its exit and its solder joints a cable must not bend more sharply than four times its diameter.",
    "A cable kinked inside the wall works its joints loose, and breaks at the first pull.",
    "two equal arcs from the exit's height to the board over the way in plan: radius = (way^2 + rise^2) / (4 rise), against 4 x the cable's diameter (2 x stops)",
    "4 x outside diameter for a fixed cable: common norm for data cables")
{
    private const double Wanted = 4;
    private const double Least = 2;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        if (housing.Plan.CableExit is not { } exit)
        {
            yield break;
        }

        double cableZ = exit.NotchBottom + (exit.NotchWidth / 2);
        Point2 mouth = Point2.Polar(exit.WallInner, exit.At);
        foreach (WireLead wire in housing.Board.Board.Wires.Where(wire => wire.To == "out"))
        {
            double joint = wire.Side == BoardSide.Bottom ? housing.Plan.Stack.BoardBottom : housing.Plan.Stack.BoardTop;
            double rise = Math.Abs(joint - cableZ);
            double way = Point2.Distance(mouth, wire.At);
            if (rise == 0)
            {
                continue;
            }

            double radius = ((way * way) + (rise * rise)) / (4 * rise);
            double wanted = Wanted * exit.CableDiameter;
            if (radius < wanted)
            {
                yield return Found(
                    radius < Least * exit.CableDiameter ? Severity.Stop : Severity.Warn, wire.Name,
                    $"from the exit to its joints the cable bends with a radius of {radius:0.0} mm, {wanted:0.0} are wanted", radius, wanted,
                    new Point3((mouth.X + wire.At.X) / 2, (mouth.Y + wire.At.Y) / 2, (joint + cableZ) / 2),
                    "solder the cable farther from its exit, strip it farther back, or turn the exit to another side");
            }
        }
    }
}
