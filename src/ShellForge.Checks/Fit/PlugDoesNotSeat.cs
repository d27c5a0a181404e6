using ShellForge.Geometry.Numerics;
using ShellForge.Planning;

namespace ShellForge.Checks.Fit;

/// <summary>A connector too far behind the face that stops the plug.</summary>
public sealed class PlugDoesNotSeat() : Rule(
    "plug-does-not-seat",
    "A plug must reach its connector before its overmould meets the wall.",
    "A receptacle 2 mm behind the wall is a ruined print: the plug wobbles, does not latch, or cannot be pulled.",
    "distance from the connector's mouth to the face that the overmould touches, against the mouth's profile (warn and stop)",
    "connector drawings as listed in the package profile")
{
    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        foreach (PortPlan port in housing.Plan.Ports)
        {
            double warn = port.Mouth.SeatDepthWarn;
            double stop = port.Mouth.SeatDepthStop;
            double behind = Math.Round(port.MouthBehind, 3);
            if (behind > warn)
            {
                yield return Found(
                    behind > stop ? Severity.Stop : Severity.Warn, port.Ref, $"its mouth lies {behind:0.00} mm behind the face that the plug's overmould meets",
                    behind, behind > stop ? stop : warn, new Point3(port.Face.X, port.Face.Y, port.AxisZ),
                    "move the connector outward on the board ('past-edge:'), thin the wall, or widen the recess to the overmould");
            }
        }
    }
}
