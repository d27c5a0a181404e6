using ShellForge.Board.Description;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Fit;

/// <summary>A plug that no fingers can hold, or that the table or another plug is in the way of.</summary>
public sealed class NoFingerRoom() : Rule(
    "no-finger-room",
    "Enough of a seated plug must stand out to be gripped, above the table or wall behind, and clear of the next plug.",
    "A plug that is flush with the wall goes in once and comes out with pliers; one below the floor lifts the lamp off the table.",
    "overmould outside the outer wall face against 8 mm (4 stops), but for wire connectors, which are drawn by their leads; its lower "
        + "edge against the face the housing lies on; 3 mm between two overmoulds",
    "typical: two fingertips; try it with the cable at hand")
{
    private const double Grip = 8;
    private const double LeastGrip = 4;
    private const double BetweenPlugs = 3;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        PlugEnvelope[] plugs = [.. housing.Plan.Ports.Select(port => PlugEnvelope.Of(port, 0))];
        foreach (PlugEnvelope plug in plugs)
        {
            PortPlan port = plug.Port;
            double outside = Math.Round(PlugEnvelope.MouthU(port) + port.Mouth.PlugLength - port.WallFace, 3);
            if (outside < Grip && !port.Mouth.IsDrawnByLeads)
            {
                yield return Found(
                    outside < LeastGrip ? Severity.Stop : Severity.Warn, port.Ref,
                    $"only {outside:0.0} mm of its plug stands out of the wall to grip",
                    outside, Grip, Outside(port, outside),
                    "bring the connector nearer to the wall ('past-edge:'), thin the wall, or use a cable with a longer overmould");
            }

            double above = Math.Round(port.AxisZ - (port.Mouth.PlugHeight / 2) + (housing.Plan.Mount?.OffSurface ?? 0), 3);
            if (above < 0 && housing.Board.Use.Orientation != UseOrientation.Hanging)
            {
                string face = housing.Board.Use.Orientation == UseOrientation.Wall ? "wall" : "table";
                yield return Found(
                    Severity.Warn, port.Ref, $"its plug reaches {-above:0.0} mm below the floor: the {face} behind is in its way", above, 0,
                    Outside(port, outside) with { Z = 0 },
                    "raise the board ('clearance: {below-parts: ...}'), or use a cable with a flatter overmould");
            }
        }

        for (int i = 0; i < plugs.Length; i++)
        {
            for (int j = i + 1; j < plugs.Length; j++)
            {
                if (Clearance.SignedGap(plugs[i].Surface, plugs[j].Surface, BetweenPlugs) is { } gap)
                {
                    yield return Found(
                        gap.Distance <= 0 ? Severity.Stop : Severity.Warn, plugs[i].Port.Ref,
                        $"its plug and that of {plugs[j].Port.Ref} are {Math.Max(0, gap.Distance):0.0} mm apart: they can't be plugged in "
                            + $"together",
                        gap.Distance, BetweenPlugs, gap.OnFirst, $"turn or move {plugs[i].Port.Ref} or {plugs[j].Port.Ref} on the board");
                }
            }
        }
    }

    private static Point3 Outside(PortPlan port, double outside)
    {
        Point2 at = port.Face + Point2.Polar(port.WallFace - PlugEnvelope.MouthU(port) + Math.Max(0, outside / 2), port.Faces);
        return new Point3(at.X, at.Y, port.AxisZ);
    }
}
