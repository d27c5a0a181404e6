using System.Globalization;
using ShellForge.Checks.Gauges;
using ShellForge.Physics.Power;

namespace ShellForge.Checks.Power;

/// <summary>What findings on current say alike.</summary>
internal static class PowerWords
{
    // Supplies are sold by the half ampere.
    private const double Sold = 0.5;

    /// <summary>How to draw no more than the supply may give, or what to draw it from.</summary>
    public static string Less(HousingUnderCheck housing, double allowed)
    {
        BoardPower power = housing.Power;
        double wanted = Math.Ceiling(power.LargestAmps / PowerModel.SupplyUse / Sold) * Sold;
        string supply = string.Create(CultureInfo.InvariantCulture, $"take a supply of {wanted:0.0} A or more");
        return Dimmed(housing, allowed) is { } dimmed ? $"{dimmed}, or {supply}"
            : $"dimming does not help, since dark LEDs and controller alone draw more: {supply}";
    }

    /// <summary>How to draw no more than contacts or leads carry.</summary>
    public static string Within(HousingUnderCheck housing, double allowed, string otherwise) =>
        Dimmed(housing, allowed) is { } dimmed ? $"{dimmed}, or {otherwise}" : otherwise;

    private static string? Dimmed(HousingUnderCheck housing, double allowed) =>
        BrightnessCap.Remedy(housing, housing.Power.Result.BrightnessWithin(housing.Power.Input, allowed));
}
