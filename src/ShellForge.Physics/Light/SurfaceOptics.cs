namespace ShellForge.Physics.Light;

/// <summary>What a printed wall does with visible light.</summary>
/// <param name="Reflectance">Share thrown back, as a matt surface does, 0 to 1.</param>
/// <param name="TransmissionLength">t0 of the law T = 1 / (1 + t / t0), mm; 0 for what lets nothing through.</param>
/// <param name="DarkFrom">
/// Thickness from which nothing is seen through it, mm: dark pigments absorb, and the law errs ever more the thicker they are. Infinite for
/// what scatters.
/// </param>
public readonly record struct SurfaceOptics(double Reflectance, double TransmissionLength, double DarkFrom = double.PositiveInfinity)
{
    /// <summary>
    /// Share that passes a wall. Two-flux law of a scattering sheet; for dark pigments, which absorb, it errs on the bright side.
    /// Source: fit of T = 1 / (1 + t / t0) to the trade's table of printed walls, spread of two between spools.
    /// </summary>
    /// <param name="thickness">mm, 0 or more.</param>
    public double Transmission(double thickness) =>
        TransmissionLength <= 0 ? thickness > 0 ? 0 : 1 : 1 / (1 + (thickness / TransmissionLength));
}
