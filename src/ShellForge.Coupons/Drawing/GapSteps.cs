using System.Collections.Immutable;
using ShellForge.Coupons.Answers;

namespace ShellForge.Coupons.Drawing;

/// <summary>
/// The gaps per side that a fit is tried with: the usual ones, or farther ones where every usual one was too tight; and where the answer
/// "none fits" leads.
/// </summary>
internal static class GapSteps
{
    // The first gap that is tried at all, and how far apart the farther ones are, mm.
    private const double Least = 0.05;
    private const double Step = 0.05;
    private const int Count = 10;

    // Farther gaps lie round their middle as the usual ones do, so that the first of them is the last of those, mm.
    private const double HalfReach = 0.275;

    // Beyond this gap nothing is a fit any more: sizes are wrong, and the bar tells which, mm.
    private const double Widest = 1.05;

    /// <summary>Every printer in order passes the last of them, mm.</summary>
    private static readonly ImmutableArray<double> Usual = [0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.5, 0.6];

    /// <summary>The gaps of a coupon, rising, mm.</summary>
    public static ImmutableArray<double> Of(CouponWish wish) => wish.Around is { } around
        ? StepGrid.Rising(Math.Clamp(Nearest(around - HalfReach), Least, Widest - (Step * (Count - 1))), Step, Count)
        : Usual;

    /// <summary>What follows where no gap fits: farther gaps, or the bar.</summary>
    /// <param name="steps">The gaps that were tried.</param>
    /// <param name="judged">What came of the answers, without a value and without a fault.</param>
    /// <param name="tight">What to put in order first where even the widest is too tight.</param>
    /// <param name="loose">What it is where even the closest is too loose.</param>
    public static Reading Next(ImmutableArray<double> steps, FitJudgement judged, string tight, string loose)
    {
        bool wider = judged.NextAround > steps[^1];
        bool bar = wider ? steps[^1] >= Widest - (Step / 2) : steps[0] <= Least;
        return new Reading
        {
            NextAround = bar ? null : judged.NextAround,
            NextKind = bar ? Kinds.SizeBar.Word : null,
            Notes = [wider ? tight : loose],
        };
    }

    private static double Nearest(double gap) => Math.Round(gap / Step, MidpointRounding.AwayFromZero) * Step;
}
