using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Checks.Light;

/// <summary>An LED that stands beside the circle of all others, in the gap that they leave for it.</summary>
public sealed class LedOffCircle() : Rule(
    "led-off-circle",
    "An LED that belongs to a circle by its place among the others must lie on it.",
    "One mistyped figure makes a housing many millimetres taller, since the light has to reach it, and the LED is not where it is drawn.",
    "circles about the board's middle that at least five LEDs lie on, to 0.2 mm; an LED in the middle of a gap of two pitches, more than "
        + "0.3 mm and less than one and a half pitches off, is told",
    "typical: LEDs are placed to 0.1 mm; boards with one LED off their circle on purpose are rare")
{
    private const double OnCircle = 0.2;
    private const double Off = 0.3;
    private const int Fewest = 5;

    // How far from the middle of its gap an LED may lie, and how much a gap may differ from two pitches, as shares of a pitch.
    private const double InGap = 0.25;

    // An LED farther off than so many pitches belongs to something else.
    private const double Near = 1.5;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        Pixel[] leds = [.. housing.Board.Board.PixelCircles.SelectMany(circle => circle.Pixels)];
        foreach (Pixel led in leds)
        {
            if (CircleOf(led, leds) is not { } circle)
            {
                continue;
            }

            double off = Math.Abs(led.At.Length - circle.Radius);
            Point2 there = Point2.Polar(circle.Radius, circle.Place) + housing.Board.Board.FileCentre;
            yield return Found(
                Severity.Warn, led.Ref,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"it lies {off:0.0#} mm off the circle of {2 * circle.Radius:0.0#} mm that the {circle.Others} beside it are on, in "
                        + $"the gap they leave"),
                off, Off, new Point3(led.At.X, led.At.Y, housing.Plan.Stack.LedWindow),
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"correct its place if it is mistyped: on the circle it is 'at: [{there.X:0.###}, {there.Y:0.###}]'"));
        }
    }

    // The circle of others in whose gap an LED stands; null where it is on one, or in no gap.
    private static Gap? CircleOf(Pixel led, Pixel[] leds)
    {
        foreach (double radius in leds.Where(other => other != led).Select(other => other.At.Length).Distinct().Order())
        {
            Pixel[] on = [.. leds.Where(other => other != led && Math.Abs(other.At.Length - radius) <= OnCircle)];
            double off = Math.Abs(led.At.Length - radius);
            if (on.Length < Fewest || off <= Off || radius < off)
            {
                continue;
            }

            Angle at = Angle.Of(led.At);
            double[] turns = [.. on.Select(other => (Angle.Of(other.At) - at).Normalized.Degrees).Order()];
            double[] steps = [.. turns.Zip(turns.Skip(1), (a, b) => b - a).Order()];
            double pitch = steps[steps.Length / 2];
            (double after, double before) = (turns[0], 360 - turns[^1]);
            bool evenly = Math.Abs(after + before - (2 * pitch)) <= InGap * pitch && Math.Abs(after - before) / 2 <= InGap * pitch;
            if (evenly && off <= Near * radius * Angle.FromDegrees(pitch).Radians)
            {
                return new Gap(radius, at + Angle.FromDegrees((after - before) / 2), on.Length);
            }
        }

        return null;
    }

    // A circle with a gap: where in it an LED would stand, and how many are on it.
    private sealed record Gap(double Radius, Angle Place, int Others);
}
