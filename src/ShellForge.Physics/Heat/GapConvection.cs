namespace ShellForge.Physics.Heat;

/// <summary>
/// How much more a gap carries than still air would: the Nusselt number of air between two plates, 1 where the gap is too thin for air to
/// turn over.
/// </summary>
internal static class GapConvection
{
    // Gravity over kinematic viscosity times thermal diffusivity of air at about 40 degrees, 1/(m3): 9.81 / (1.70e-5 x 2.43e-5).
    private const double Lift = 2.375e10;
    private const double Kelvin = 273.15;

    /// <summary>The Nusselt number.</summary>
    /// <param name="lower">Temperature of the lower plate, or of one of two upright ones, degrees Celsius.</param>
    /// <param name="upper">Temperature of the other.</param>
    /// <param name="gap">m.</param>
    /// <param name="height">Height of upright plates, m.</param>
    /// <param name="upright">Whether they stand.</param>
    public static double Nusselt(double lower, double upper, double gap, double height, bool upright)
    {
        double mean = ((lower + upper) / 2) + Kelvin;
        double rayleigh = Lift * Math.Abs(lower - upper) / mean * gap * gap * gap;
        return upright ? Standing(rayleigh, height / gap) : lower > upper ? Lying(rayleigh) : 1;
    }

    // Source: Hollands and others 1976, air between level plates heated from below.
    private static double Lying(double rayleigh) =>
        rayleigh <= 0 ? 1 : 1 + (1.44 * Math.Max(0, 1 - (1708 / rayleigh))) + Math.Max(0, Math.Cbrt(rayleigh / 5830) - 1);

    // Source: ElSherbiny, Raithby and Hollands 1982, air between upright plates.
    private static double Standing(double rayleigh, double slenderness)
    {
        if (rayleigh <= 1)
        {
            return 1;
        }

        double conducting = 0.104 * Math.Pow(rayleigh, 0.293) / (1 + Math.Pow(6310 / rayleigh, 1.36));
        double laminar = 0.242 * Math.Pow(rayleigh / Math.Max(1, slenderness), 0.272);
        double turbulent = 0.0605 * Math.Cbrt(rayleigh);
        return Math.Max(Math.Cbrt(1 + (conducting * conducting * conducting)), Math.Max(laminar, turbulent));
    }
}
