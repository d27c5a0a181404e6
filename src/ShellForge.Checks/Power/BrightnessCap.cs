using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Checks.Gauges;
using ShellForge.Physics.Power;

namespace ShellForge.Checks.Power;

/// <summary>What sets the cap on brightness.</summary>
public enum CapReason
{
    /// <summary>The brightness that the board file plans.</summary>
    Planned,

    /// <summary>The supply, its cable's contacts included.</summary>
    Supply,

    /// <summary>Heat: of the plastic, or of the LEDs themselves.</summary>
    Plastic,

    /// <summary>Heat: of the battery inside.</summary>
    Battery,
}

/// <summary>How bright the LEDs may be, and what says so.</summary>
/// <param name="Brightness">A share of full white, 0 to 1.</param>
/// <param name="By">What sets it.</param>
public sealed record BrightnessCap(double Brightness, CapReason By)
{
    private const double Thousand = 1000;

    /// <summary>The least of all caps, the planned brightness among them.</summary>
    public static BrightnessCap Of(HousingUnderCheck housing) =>
        Limits(housing).Prepend(new(housing.Board.Power.Brightness, CapReason.Planned)).MinBy(cap => cap.Brightness)!;

    /// <summary>
    /// How to dim the LEDs so far that nothing is asked too much of: every finding that dimming settles names the same number. What is too
    /// much even with dark LEDs is left out, since dimming does not settle it.
    /// </summary>
    /// <param name="housing">The housing.</param>
    /// <param name="own">The brightness that settles the finding itself, 0 to 1.</param>
    /// <returns>What to do; null where even one step of 255 is too much for the finding itself.</returns>
    internal static string? Remedy(HousingUnderCheck housing, double own)
    {
        if (PowerModel.FirmwareCap(own) == 0)
        {
            return null;
        }

        double all = Limits(housing).Select(cap => cap.Brightness)
            .Where(brightness => PowerModel.FirmwareCap(brightness) > 0).Append(own).Min();
        return string.Create(
            CultureInfo.InvariantCulture,
            $"cap the firmware at {PowerModel.FirmwareCap(all)} of 255 and write 'power: {{brightness: "
                + $"{Math.Floor(all * Thousand) / Thousand:0.###}, capped: true}}'");
    }

    private static ImmutableArray<BrightnessCap> Limits(HousingUnderCheck housing) =>
    [
        new(housing.Power.Result.AllowedBrightness, CapReason.Supply),
        new(housing.Heat.LargestBrightness, CapReason.Plastic),
        .. housing.Heat.BatteryBrightness is double cool ? [new(cool, CapReason.Battery)] : Array.Empty<BrightnessCap>(),
    ];
}
