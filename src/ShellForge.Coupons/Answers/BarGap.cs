namespace ShellForge.Coupons.Answers;

/// <summary>Whether a gap that was found by hand can be true beside what calipers say of bodies and openings.</summary>
internal static class BarGap
{
    // A thumb presses in no more than this much overlap per side, and nothing holds by itself over more air than that, mm.
    private const double MostOverlap = 0.08;
    private const double MostAir = 0.3;

    /// <summary>Why it can't be true, in a sentence; null where it can.</summary>
    /// <param name="gap">The gap per side that fits, as drawn, mm.</param>
    /// <param name="outer">Added to outer sizes so that they come out, mm.</param>
    /// <param name="opening">Added to the opening, mm.</param>
    /// <param name="inner">What goes in: "lid".</param>
    /// <param name="into">What it goes into: "ring".</param>
    public static string? Doubt(double gap, double outer, double opening, string inner, string into)
    {
        double inHand = Math.Round(gap + ((outer - opening) / 2), 3);
        return inHand < -MostOverlap
                ? $"a {inner} drawn with {gap:0.00} mm per side is {-inHand:0.00} mm too wide for its {into} by the bar, and can't have "
                    + "gone in"
            : inHand > MostAir
                ? $"a {inner} drawn with {gap:0.00} mm per side has {inHand:0.00} mm of air in its {into} by the bar, and can't have held"
            : null;
    }
}
