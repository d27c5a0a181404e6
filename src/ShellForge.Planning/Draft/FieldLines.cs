using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Physics.Light;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Draft;

/// <summary>Along which lines light over a field of LEDs is judged.</summary>
public static class FieldLines
{
    // A cell's rim lies in its walls' half shadow in any case: so much of the room between them is judged.
    private const double JudgedShare = 0.8;

    /// <summary>
    /// From every LED to each of its neighbours where light blends; with cells, and for LEDs without a neighbour, across each LED's own
    /// room.
    /// </summary>
    /// <param name="field">The LEDs.</param>
    /// <param name="window">The lit window: a way that leaves it is none.</param>
    /// <param name="wall">Thickness of the walls between cells, mm; null where light blends.</param>
    public static PitchLine Judged(LedFieldPlan field, Region window, double? wall)
    {
        LedLink[] links = [.. field.Links.Where(link => window.Contains(0.5 * (field.Leds[link.From].At + field.Leds[link.To].At)))];
        if (wall is null && links.Length > 0)
        {
            return PitchLine.Ways(links.Select(link => (field.Leds[link.From].At, field.Leds[link.To].At)), each: false);
        }

        return PitchLine.Ways(
            Enumerable.Range(0, field.Leds.Length).Where(led => window.Contains(field.Leds[led].At)).SelectMany(led =>
            {
                Point2 at = field.Leds[led].At;
                double half = JudgedShare * Math.Max(0, field.Leds[led].Pitch - (wall ?? 0)) / 2;
                Point2 along = half * Towards(field, led);
                var across = new Point2(-along.Y, along.X);
                return new[] { (at - along, at + along), (at - across, at + across) };
            }),
            each: wall is not null);
    }

    // To the nearest neighbour.
    private static Point2 Towards(LedFieldPlan field, int led)
    {
        Point2 at = field.Leds[led].At;
        FieldLed[] others = [.. field.Leds.Where((_, i) => i != led)];
        if (others.Length == 0)
        {
            return new Point2(1, 0);
        }

        Point2 to = others.MinBy(other => Point2.Distance(other.At, at)).At - at;
        return (1 / to.Length) * to;
    }
}
