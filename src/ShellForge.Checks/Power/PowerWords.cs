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
    public static string Less(BoardPower power, double allowed)
    {
        double wanted = Math.Ceiling(power.LargestAmps / PowerModel.SupplyUse / Sold) * Sold;
        string supply = string.Create(CultureInfo.InvariantCulture, $"take a supply of {wanted:0.0} A or more");
        return Dimmed(power, allowed) is { } dimmed ? $"{dimmed}, or {supply}"
            : $"dimming does not help, since dark LEDs and controller alone draw more: {supply}";
    }

    /// <summary>How to draw no more than contacts or leads carry.</summary>
    public static string Within(BoardPower power, double allowed, string otherwise) =>
        Dimmed(power, allowed) is { } dimmed ? $"{dimmed}, or {otherwise}" : otherwise;

    private static string? Dimmed(BoardPower power, double allowed)
    {
        double brightness = power.Result.BrightnessWithin(power.Input, allowed);
        int most = PowerModel.FirmwareCap(brightness);
        return most == 0 ? null : string.Create(
            CultureInfo.InvariantCulture,
            $"cap the firmware at {most} of 255 and write 'power: {{brightness: {Math.Floor(1000 * brightness) / 1000:0.###}, capped: "
                + $"true}}'");
    }
}
