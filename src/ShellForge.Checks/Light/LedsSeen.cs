using System.Globalization;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Physics.Light;
using ShellForge.Planning.Hands;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Light;

/// <summary>An LED that shines straight out of an opening of the maker's own.</summary>
public sealed class LedsSeen() : Rule(
    "leds-seen",
    "No LED should be seen through an opening that is not the window.",
    "A bare LED is a hundred times brighter than the diffuser: it dazzles, and the eye sees nothing else.",
    "LEDs, other than the one it is for, from whose middle a straight line leads through the opening past all that is printed and "
        + "soldered",
    "straight lines through the solids as made")
{
    // The line starts this far off the LED's window, mm.
    private const double OffWindow = 0.05;

    // So many are told by name.
    private const int Named = 3;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        OwnOpeningPlan[] openings = [.. housing.Plan.Openings.OfType<OwnOpeningPlan>()];
        if (openings.Length == 0 || housing.Light is not { } light)
        {
            yield break;
        }

        string[] refs = [.. housing.Board.Board.PixelCircles.SelectMany(circle => circle.Pixels).Select(pixel => pixel.Ref)];
        foreach (OwnOpeningPlan opening in openings)
        {
            Point3[] places = [.. SightLines.Through(opening).Select(line => line.Outside)];
            string[] seen =
            [
                .. light.Scene.Leds.Zip(refs).Where(led => led.Second != opening.PartRef
                        && places.Any(place => Shines(light.Scene, led.First, place)))
                    .OrderBy(led => Point3.Distance(led.First.At, places[0])).Select(led => led.Second),
            ];
            if (seen.Length > 0)
            {
                string which = seen.Length <= Named ? HandWords.Listed(seen)
                    : string.Create(CultureInfo.InvariantCulture, $"{seen[0]} and {seen.Length - 1} more LEDs");
                yield return Found(
                    Severity.Warn, opening.Ref, $"{which} can be seen straight through it", seen.Length, 0, places[0],
                    opening.OutOfSight, "LEDs");
            }
        }
    }

    private static bool Shines(LightScene scene, LedSource led, Point3 place)
    {
        Point3 from = led.At + (OffWindow * led.Axis);
        return Point3.Dot(place - from, led.Axis) > 0 && !scene.Solids.Blocks(from, place) && !scene.Sheet.Blocks(from, place);
    }
}
