using System.Collections.Immutable;

namespace ShellForge.Physics.Power;

/// <summary>A stranded copper conductor.</summary>
/// <param name="Gauge">AWG.</param>
/// <param name="MilliohmsPerMetre">One conductor.</param>
/// <param name="EnclosedAmps">Bundled in warm air, A.</param>
public readonly record struct WireGauge(int Gauge, double MilliohmsPerMetre, double EnclosedAmps)
{
    /// <summary>Drop over a pair of conductors, out and back, V.</summary>
    public double PairDropVolts(double metres, double amps) => 2 * metres * MilliohmsPerMetre / 1000 * amps;
}

/// <summary>
/// Conductors for leads inside a housing. Free-air lists allow far more and are no guide here.
/// Source: wire notes of the trade, three that agree within a tenth.
/// </summary>
public static class WireGauges
{
    /// <summary>All, thinnest first.</summary>
    public static ImmutableArray<WireGauge> All { get; } =
    [
        new(28, 213, 0.8), new(26, 134, 1.0), new(24, 84, 2.0), new(22, 53, 3.0), new(20, 33, 5.0), new(18, 21, 7.0),
    ];

    /// <summary>The thinnest that carries a current and stays within a drop; null when none does.</summary>
    /// <param name="amps">A.</param>
    /// <param name="metres">One way, m.</param>
    /// <param name="dropVolts">Drop allowed out and back, V.</param>
    public static WireGauge? Thinnest(double amps, double metres, double dropVolts)
    {
        foreach (WireGauge wire in All)
        {
            if (wire.EnclosedAmps >= amps && wire.PairDropVolts(metres, amps) <= dropVolts)
            {
                return wire;
            }
        }

        return null;
    }

    /// <summary>
    /// A gauge by its number: the next thinner of those listed, so that it errs on the safe side; null below the thinnest.
    /// </summary>
    public static WireGauge? Of(int gauge)
    {
        WireGauge[] fitting = [.. All.Where(wire => wire.Gauge >= gauge)];
        return fitting.Length == 0 ? null : fitting[^1];
    }
}
