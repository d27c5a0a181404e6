using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Light;

/// <summary>Light of one cell in the next.</summary>
public sealed class CellsBleed() : Rule(
    "cells-bleed",
    "With a cell for each LED, one LED must not light its neighbour's cell.",
    "A picture of single pixels washes out when each pixel lights the next one too.",
    "mean light of one LED on a neighbour's part of the window over that on its own, over the cell walls by rays, plus what passes the "
        + "wall's thickness, T = 1 / (1 + t / t0) of what scatters, exp(-t / t0) of dark pigments",
    "limits typical: 5 % is seen beside a dark pixel, 10 % turns colours; t0 from the filament's profile, typical: print a coupon")
{
    private const double Seen = 0.05;
    private const double Washes = 0.10;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        if (housing.Light is { Scene.Cells: true } light && light.Crosstalk > Seen)
        {
            string filament = housing.Plan.Baffle!.Filament.Name;
            yield return Found(
                light.Crosstalk > Washes ? Severity.Warn : Severity.Note, PartNames.Baffle,
                light.Crosstalk > 1
                    ? string.Create(CultureInfo.InvariantCulture,
                        $"an LED lights its neighbour's cell more than its own; "
                            + $"{100 * light.ThroughCellWall:0.#} % pass the {filament} wall")
                    : string.Create(CultureInfo.InvariantCulture,
                        $"a neighbour's cell is lit {100 * light.Crosstalk:0.#} % as brightly as the LED's own; "
                            + $"{100 * light.ThroughCellWall:0.#} % pass the {filament} wall"),
                light.Crosstalk, light.Crosstalk > Washes ? Washes : Seen, BetweenTwo(housing),
                housing.Plan.Baffle.Filament.Absorbs
                    ? "'look: blend', or less distance ('diffuser.distance'): what passes goes over the walls, whose filament is dark "
                        + "already"
                    : $"a black baffle ('print: {{baffle: {WallGlows.Black(housing)}}}'), or 'look: blend'", "");
        }
    }

    // One wall stands for all: that between the first two LEDs.
    private static Point3? BetweenTwo(HousingUnderCheck housing)
    {
        if (housing.Plan.Diffuser.Field is { Links: [var link, ..] } field)
        {
            Point2 between = 0.5 * (field.Leds[link.From].At + field.Leds[link.To].At);
            return new Point3(between.X, between.Y, (housing.Plan.Stack.LedWindow + housing.Plan.Stack.DiffuserInner) / 2);
        }

        Pixel[] leds =
            [.. housing.Board.Board.PixelCircles.Where(circle => circle.Pixels.Length > 1).SelectMany(circle => circle.Pixels.Take(2))];
        if (leds.Length < 2)
        {
            return null;
        }

        Point2 middle = 0.5 * (leds[0].At + leds[1].At);
        return new Point3(middle.X, middle.Y, (housing.Plan.Stack.LedWindow + housing.Plan.Stack.DiffuserInner) / 2);
    }
}
