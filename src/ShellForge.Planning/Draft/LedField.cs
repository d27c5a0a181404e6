using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Draft;

/// <summary>Finds neighbours among LEDs wherever they lie.</summary>
internal static class LedField
{
    // LEDs farther apart than this, mm, light spots of their own.
    private const double FarApart = 40;

    // Neighbours are no farther apart than this many pitches: the diagonal of a square grid is one, the next turn of a spiral is none.
    private const double Reach = 1.5;

    // On a circle of LEDs a skipped place or two don't end the row.
    private const double ReachOnCircle = 2.5;

    // Four LEDs in a square lie on one circle but for rounding, mm: places are given to a hundredth.
    private const double Rounding = 0.02;

    /// <summary>The LEDs of a board that shine to the front, with their neighbours.</summary>
    public static LedFieldPlan Of(CircuitBoard board)
    {
        PixelCircle[] circles = [.. board.PixelCircles.Where(circle => circle.Facing == PixelFacing.Up && !circle.Pixels.IsEmpty)];
        (PixelCircle Circle, Pixel Pixel)[] all = [.. circles.SelectMany(circle => circle.Pixels.Select(pixel => (circle, pixel)))];
        Point2[] at = [.. all.Select(led => led.Pixel.At)];
        var leds = ImmutableArray.CreateBuilder<FieldLed>(all.Length);
        for (int i = 0; i < all.Length; i++)
        {
            double nearest = double.PositiveInfinity;
            for (int j = 0; j < at.Length; j++)
            {
                nearest = j == i ? nearest : Math.Min(nearest, Point2.Distance(at[i], at[j]));
            }

            bool alone = nearest > FarApart;
            double body = Math.Max(all[i].Circle.Led.Length.Value, all[i].Circle.Led.Width.Value);
            leds.Add(new FieldLed(all[i].Pixel.Ref, at[i], alone ? 2 * body : nearest, alone));
        }

        ImmutableArray<FieldLed> places = leds.ToImmutable();
        return new LedFieldPlan(places, Links([.. all.Select(led => led.Circle)], places));
    }

    private static ImmutableArray<LedLink> Links(PixelCircle[] circles, ImmutableArray<FieldLed> leds)
    {
        var links = ImmutableArray.CreateBuilder<LedLink>();
        for (int i = 0; i < leds.Length; i++)
        {
            for (int j = i + 1; j < leds.Length; j++)
            {
                bool onCircle = ReferenceEquals(circles[i], circles[j]) && circles[i].Count > 1;
                double apart = Point2.Distance(leds[i].At, leds[j].At);
                double reach = (onCircle ? ReachOnCircle : Reach) * Math.Max(leds[i].Pitch, leds[j].Pitch);
                if (!leds[i].Alone && !leds[j].Alone && apart <= Math.Min(reach, FarApart) + Rounding && IsFree(leds, i, j))
                {
                    links.Add(new LedLink(i, j, onCircle ? circles[i].Centre : null));
                }
            }
        }

        return links.ToImmutable();
    }

    // No other LED within the circle that has the two at the ends of a diameter; one on it is a neighbour of both as well.
    private static bool IsFree(ImmutableArray<FieldLed> leds, int i, int j)
    {
        Point2 middle = 0.5 * (leds[i].At + leds[j].At);
        double radius = (Point2.Distance(leds[i].At, leds[j].At) / 2) - Rounding;
        for (int k = 0; k < leds.Length; k++)
        {
            if (k != i && k != j && Point2.Distance(leds[k].At, middle) < radius)
            {
                return false;
            }
        }

        return true;
    }
}
