using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Checks.Gauges;

/// <summary>A screw of a pattern: where it goes, and how much room it has in its hole.</summary>
/// <param name="Name">Name for messages.</param>
/// <param name="At">Its axis as planned.</param>
/// <param name="HoleDiameter">The hole it passes, mm, as it shall be in the hand.</param>
/// <param name="ThreadDiameter">Its own diameter, mm.</param>
/// <param name="Clamp">Length between its hole's far face and the insert, mm: a tilted insert leans the screw over it.</param>
internal readonly record struct ScrewPlace(string Name, Point2 At, double HoleDiameter, double ThreadDiameter, double Clamp);

/// <summary>Spread of what meets in a screw pattern, each plus and minus, mm.</summary>
/// <param name="Boss">Place of a printed boss.</param>
/// <param name="Insert">Place of the insert in its boss.</param>
/// <param name="TiltDegrees">Tilt of the insert.</param>
/// <param name="Hole">Place of a hole in the part that is laid on.</param>
/// <param name="HoleDiameter">Diameter of that hole.</param>
/// <param name="Scale">Size of the whole print against the part that is laid on, a fraction, anywhere within it: one error a build, by
/// which all bosses stand wide or close.</param>
internal readonly record struct ScrewSpread(double Boss, double Insert, double TiltDegrees, double Hole, double HoleDiameter,
    double Scale = 0);

/// <summary>What the simulation found.</summary>
/// <param name="Probability">Share of builds in which every screw starts.</param>
/// <param name="WorstScrew">Number, from 0, of the screw that most often keeps a build from going together; the first when none
/// does.</param>
/// <param name="DiameterFor99">How much wider (or, negative, tighter) the holes may be for 99 % of builds, mm on diameter.</param>
internal sealed record ScrewStartResult(double Probability, int WorstScrew, double DiameterFor99);

/// <summary>
/// Will all screws start? Each trial draws one build, its bosses all farther out or in by one error of scale; the part that is laid on may
/// shift and turn until the tightest screw has the most room, as hands do. The search for that place stops a little short of the best, so
/// the answer errs to the careful side.
/// </summary>
internal static class ScrewStart
{
    private const int MostNudges = 40;

    /// <summary>Runs the trials. The same input gives the same answer.</summary>
    public static ScrewStartResult Simulate(ImmutableArray<ScrewPlace> screws, ScrewSpread spread, int trials, ulong seed)
    {
        var dice = new SeededDice(seed);
        double tiltSpread = Angle.FromDegrees(spread.TiltDegrees).Sin;
        double reach = Math.Sqrt(screws.Average(s => Point2.Dot(s.At, s.At)));
        Span<Point2> errors = stackalloc Point2[screws.Length];
        Span<double> rooms = stackalloc double[screws.Length];
        double[] excesses = new double[trials];
        int[] blamed = new int[screws.Length];
        for (int trial = 0; trial < trials; trial++)
        {
            double scale = dice.Within(spread.Scale);
            for (int i = 0; i < screws.Length; i++)
            {
                double lean = screws[i].Clamp * tiltSpread;
                errors[i] = (scale * screws[i].At) + new Point2(
                    dice.Error(spread.Boss) + dice.Error(spread.Insert) + dice.Error(lean) + dice.Error(spread.Hole),
                    dice.Error(spread.Boss) + dice.Error(spread.Insert) + dice.Error(lean) + dice.Error(spread.Hole));
                rooms[i] = ((screws[i].HoleDiameter - screws[i].ThreadDiameter) / 2) + dice.Error(spread.HoleDiameter / 2);
            }

            (double excess, int worst) = BestPlace(screws, errors, rooms, reach);
            excesses[trial] = excess;
            if (excess > 0)
            {
                blamed[worst]++;
            }
        }

        int good = excesses.Count(excess => excess <= 0);
        Array.Sort(excesses);
        double quantile = excesses[Math.Min(trials - 1, (int)Math.Ceiling(0.99 * trials) - 1)];
        return new ScrewStartResult((double)good / trials, Array.IndexOf(blamed, blamed.Max()), 2 * quantile);
    }

    // Least over all shifts and turns of the largest (offset - room). The turn is scaled by the pattern's reach, so that the three
    // unknowns are lengths. From the mean, step towards the worst screw by ever smaller steps: the smallest-enclosing-ball walk of
    // Badoiu and Clarkson, 2003.
    private static (double Excess, int Worst) BestPlace(
        ImmutableArray<ScrewPlace> screws, Span<Point2> errors, Span<double> rooms, double reach)
    {
        Point2 shift = default;
        foreach (Point2 error in errors)
        {
            shift += (1.0 / errors.Length) * error;
        }

        double turn = 0;
        double best = double.PositiveInfinity;
        int bestWorst = 0;
        for (int nudge = 1; nudge <= MostNudges; nudge++)
        {
            double most = double.NegativeInfinity;
            int worst = 0;
            Point2 towards = default;
            for (int i = 0; i < errors.Length; i++)
            {
                Point2 offset = errors[i] - shift - (turn * Around(screws[i].At, reach));
                double excess = offset.Length - rooms[i];
                if (excess > most)
                {
                    (most, worst, towards) = (excess, i, offset);
                }
            }

            if (most < best)
            {
                (best, bestWorst) = (most, worst);
            }

            if (best <= 0)
            {
                break;
            }

            double share = 1.0 / (nudge + 1);
            Point2 lever = Around(screws[worst].At, reach);
            shift += share * towards;
            turn += share * Point2.Dot(towards, lever);
        }

        return (best, bestWorst);
    }

    private static Point2 Around(Point2 at, double reach) => reach == 0 ? default : (1 / reach) * new Point2(-at.Y, at.X);
}
