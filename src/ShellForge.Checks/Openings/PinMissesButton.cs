using ShellForge.Board.Profiles;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Openings;

/// <summary>A pin that does not come to its button.</summary>
public sealed class PinMissesButton() : Rule(
    "pin-misses-button",
    "A pin through the floor must come straight to its button and stay on the pusher.",
    "A pin that strays from the pusher presses nothing, and scratches the board.",
    "what the written tub has within the pin's circle up to the pusher; the pin's play in its hole, drawn out to the pusher, with the play "
        + "of the board, against half of pin or pusher, whichever is wider",
    "lever of a pin in a hole, by its length")
{
    // A common area as small as that is rounding, mm2.
    private const double Rounding = 0.02;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        if (housing.Part(PartNames.Tub) is not { } tub)
        {
            yield break;
        }

        foreach (PinHolePlan hole in housing.Plan.Openings.OfType<PinHolePlan>())
        {
            Region pin = Region.Disc(hole.At, Ring.Peg(hole.Pin / 2));
            double met = housing.SectionsOf(tub).Where(slab => slab.FromZ < hole.Reach).Select(slab => slab.Outline.Intersect(pin).Area)
                .DefaultIfEmpty(0).Max();
            if (met > Rounding)
            {
                yield return Found(
                    Severity.Stop, hole.Ref, $"the tub stands in the way of the pin that presses it, over {met:0.0} mm\u00b2",
                    met, 0, new Point3(hole.At.X, hole.At.Y, 0), "move the button on the board", "mm2");
                continue;
            }

            double stray = Stray(housing, hole);
            double most = Math.Max(hole.Pin, hole.Pusher) / 2;
            if (stray > most)
            {
                yield return Found(
                    Severity.Warn, hole.Ref, $"a pin may stray {stray:0.0} mm and slip off the pusher, which is {hole.Pusher:0.0} mm wide",
                    stray, most, new Point3(hole.At.X, hole.At.Y, hole.Reach),
                    "leave room for a tube beside the button, give the board screws, or take a button with a wider pusher");
            }
        }
    }

    private static double Stray(HousingUnderCheck housing, PinHolePlan hole)
    {
        // Holes print narrower than drawn; what is drawn larger for that is no play.
        PrinterProfile printer = housing.Board.Print.Printer;
        double play = (hole.Diameter - printer.HoleAllowance - hole.Pin) / 2;
        double drawnOut = play * (1 + (2 * (hole.Reach - hole.LedTo) / hole.LedTo));
        return drawnOut + BoardPlay(housing) + (printer.Accuracy / 2);
    }

    // How far the board can be pushed aside: by its gap to the wall, or by its screws in their holes.
    private static double BoardPlay(HousingUnderCheck housing)
    {
        double[] inHoles =
        [
            .. housing.Plan.Screws.Where(screw => screw.Use == ScrewUse.Board).Select(screw =>
                (HoleAt(housing, screw.At) - screw.Screw.ThreadDiameter) / 2),
        ];
        return inHoles.Append(housing.Plan.Shell.BoardEdgeGap).Min();
    }

    private static double HoleAt(HousingUnderCheck housing, Point2 at) =>
        housing.Board.Board.Holes.Where(hole => hole.At == at).Select(hole => hole.Diameter).DefaultIfEmpty(double.PositiveInfinity).Min();
}
