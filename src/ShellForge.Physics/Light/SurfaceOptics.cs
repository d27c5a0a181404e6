namespace ShellForge.Physics.Light;

/// <summary>What a printed wall does with visible light.</summary>
/// <param name="Reflectance">Share thrown back by a thick wall, as a matt surface does, 0 to 1.</param>
/// <param name="TransmissionLength">t0 of the law T = 1 / (1 + t / t0) of what scatters, mm; 0 for what lets nothing through.</param>
/// <param name="AbsorptionLength">ta of the law T = exp(-t / ta) of dark pigments, mm; null for what scatters.</param>
public readonly record struct SurfaceOptics(double Reflectance, double TransmissionLength, double? AbsorptionLength = null)
{
    /// <summary>
    /// What a populated board throws back where no LED stands: solder mask and parts. Typical: white boards more, black ones less.
    /// </summary>
    public const double BoardReflectance = 0.2;

    /// <summary>Whether it lets nothing through at all.</summary>
    public bool IsOpaque => TransmissionLength <= 0 && AbsorptionLength is null or <= 0;

    /// <summary>
    /// Share that passes a wall: by the two-flux law of a scattering sheet, or by the exponential law of a pigment that swallows light.
    /// Source: fits to the trade's table of printed walls, spread of two between spools.
    /// </summary>
    /// <param name="thickness">mm, 0 or more.</param>
    public double Transmission(double thickness) => Passing(default, thickness).Share;

    /// <summary>
    /// What is left behind this wall of light that has passed others: scattering walls together pass as one does of their thickness in
    /// transmission lengths, those that swallow light each take their share.
    /// </summary>
    internal Passed Passing(Passed before, double thickness) =>
        IsOpaque ? (thickness > 0 ? before with { Swallowed = double.PositiveInfinity } : before)
        : AbsorptionLength is double length ? before with { Swallowed = before.Swallowed + (thickness / length) }
        : before with { Scattered = before.Scattered + (thickness / TransmissionLength) };

    /// <summary>Walls one behind the other.</summary>
    /// <param name="Scattered">Thickness of those that scatter, in transmission lengths.</param>
    /// <param name="Swallowed">Thickness of those that swallow light, in absorption lengths.</param>
    internal readonly record struct Passed(double Scattered, double Swallowed)
    {
        /// <summary>Share that passes them all.</summary>
        public double Share => Math.Exp(-Swallowed) / (1 + Scattered);
    }
}
