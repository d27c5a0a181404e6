namespace ShellForge.Physics.Light;

/// <summary>What the sheet in front of the LEDs does with light.</summary>
/// <param name="Transmission">Share that leaves on the viewer's side, 0 to 1.</param>
/// <param name="Reflectance">Share thrown back to the LEDs, 0 to 1.</param>
/// <param name="Spread">Standard deviation of the sideways spread within the sheet, mm.</param>
public readonly record struct DiffuserOptics(double Transmission, double Reflectance, double Spread)
{
    // Share that pigment and plastic swallow. Source: integrating-box estimate with R = 0.9 - T, trade knowledge.
    private const double Swallowed = 0.1;

    // Spread of light that was scattered often, as a share of the thickness: the spot behind a scattering slab is about as wide as the
    // slab is thick. Typical: print a coupon.
    private const double SpreadPerThickness = 0.5;

    /// <summary>
    /// A printed sheet: T = 1 / (1 + t / t0), R = 0.9 - T, and a spread of half its thickness times the share that was scattered back
    /// at least once (1 - T). Typical until a printed coupon is measured; spools differ by a factor of two.
    /// </summary>
    /// <param name="thickness">mm, above 0.</param>
    /// <param name="transmissionLength">t0, mm, above 0.</param>
    public static DiffuserOptics Printed(double thickness, double transmissionLength)
    {
        double through = new SurfaceOptics(0, transmissionLength).Transmission(thickness);
        return new DiffuserOptics(
            through, Math.Max(0, 1 - Swallowed - through), SpreadPerThickness * thickness * (1 - through));
    }
}
