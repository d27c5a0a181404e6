using System.Globalization;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Hands;
using ShellForge.Planning.Plan;
using Region = ShellForge.Geometry.Planar.Region;

namespace ShellForge.Checks.Fit;

/// <summary>A plug's overmould that does not pass wall, cover or stand.</summary>
public sealed class PlugMeetsHousing() : Rule(
    "plug-meets-housing",
    "The largest overmould of a mating plug must come straight through wall and recess, and past other parts, until the plug seats.",
    "A neat slot cut for the plug's metal shell stops every cable with a thick overmould.",
    "signed gap between the overmould's prism with its own corners, swept outward along the connector's direction, and the solids as made; "
        + "contact stops, less than 0.1 mm warns",
    "largest overmould of the mating plug as listed in the package profile")
{
    private const double Wanted = 0.1;

    /// <summary>How far behind the seated plug its way is looked at, mm: what a hand needs to line it up.</summary>
    private const double Way = 25;

    // Less than this deep is a touch, mm.
    private const double Touching = 0.005;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        foreach (PortPlan port in housing.Plan.Ports.Where(port => !PlugDoesNotSeat.Stops(housing, port)))
        {
            PlugEnvelope plug = PlugEnvelope.Of(port, Way);
            (string Name, Gap Gap)[] met =
            [
                .. housing.SoundParts.Select(part => ($"the {part.Name}", housing.TreeOf(part))).Concat(Neighbours(housing, plug))
                    .Select(each => (each.Item1, Clearance.SignedGap(plug.Surface, each.Item2, Wanted)))
                    .Where(each => each.Item2 is { } gap && Math.Round(gap.Distance, 3) < Wanted)
                    .Select(each => (each.Item1, each.Item2!.Value)),
            ];
            if (met.Length > 0)
            {
                // One plug is one thing to mend, whatever it meets.
                Gap worst = met.MinBy(each => each.Gap.Distance).Gap;
                string names = HandWords.Listed(
                    met.Where(each => (each.Gap.Distance <= 0) == (worst.Distance <= 0)).Select(each => each.Name));
                yield return Found(
                    worst.Distance <= 0 ? Severity.Stop : Severity.Warn, port.Ref, Message(port, names, worst.Distance), worst.Distance,
                    Wanted, worst.OnSecond,
                    "widen recess and opening in the package profile to the plug at hand, take a cable with a smaller overmould, or "
                        + "bring the mouth to the outer wall ('past-edge:')");
            }
        }
    }

    private static string Message(PortPlan port, string names, double gap)
    {
        string plug = string.Create(CultureInfo.InvariantCulture,
            $"the overmould of its plug, {port.Mouth.PlugWidth.Value:0.0#} x {port.Mouth.PlugHeight.Value:0.0#} mm with corners of "
                + $"{port.Mouth.PlugCornerRadius.Value:0.0#}");
        return gap > 0 ? string.Create(CultureInfo.InvariantCulture, $"{plug}, has {gap:0.00} mm to {names}")
            : gap > -Touching ? $"{plug}, touches {names} and never comes to the mouth"
            : string.Create(CultureInfo.InvariantCulture, $"{plug}, meets {names} {-gap:0.00} mm deep and never comes to the mouth");
    }

    // Other parts of the board on the plug's way.
    private static IEnumerable<(string Name, SurfaceTree Surface)> Neighbours(HousingUnderCheck housing, PlugEnvelope plug)
    {
        PortPlan port = plug.Port;
        double half = port.Mouth.PlugHeight / 2;
        Region way =
            Region.Rectangle(new Point2(plug.FromU, -port.Mouth.PlugWidth / 2), new Point2(plug.ToU, port.Mouth.PlugWidth / 2))
                .Grown(Wanted).Turned(port.Faces);
        Point2 along = Point2.Polar(1, port.Faces);
        way = way.Moved(port.Face - (Point2.Dot(port.Face, along) * along));
        return BoardBody.Of(housing.Plan)
            .Where(body =>
                body.Ref != port.Ref && body.Ref != $"{port.Ref} joint" && body.FromZ < port.AxisZ + half + Wanted
                    && body.ToZ > port.AxisZ - half - Wanted
                && body.Outline.Bounds.Touches(way.Bounds) && body.Outline.Distance(way) == 0)
            .Select(body => (body.Ref, new SurfaceTree(SolidEvaluator.Evaluate(body.Solid).Require().Mesh)));
    }
}
