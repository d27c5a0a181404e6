namespace ShellForge.Physics.Light;

/// <summary>What the sheet in front of the LEDs does with light.</summary>
/// <param name="Transmission">Share that leaves on the viewer's side, 0 to 1.</param>
/// <param name="Reflectance">Share thrown back to the LEDs, 0 to 1.</param>
/// <param name="Spread">Standard deviation of the sideways spread within the sheet, mm.</param>
/// <param name="Plastic">What it is printed of, by which other thicknesses of it are known; null for a sheet that is told by its
/// shares.</param>
public readonly record struct DiffuserOptics(double Transmission, double Reflectance, double Spread, SurfaceOptics? Plastic = null)
{
    // Spread over the share that was scattered: a part of every thickness and a part of its own. Source: walks of photons through slabs of
    // a cloud that lets 0.238 through at 0.8 mm and throws 0.85 back when thick: 0.42, 0.68, 0.91 and 1.13 mm at 0.4, 0.8, 1.2 and 1.6.
    private const double SpreadPerThickness = 0.7;
    private const double SpreadOfAny = 0.3; // mm

    // Spread of what is thrown back: it turns sooner, so it goes less far. Source: the same walks; beside a black rim 0.15, 0.21, 0.24 and
    // 0.26 mm of the edge throw nothing back at 0.4, 0.8, 1.2 and 1.6 mm.
    private const double ThrownPerThickness = 0.15;
    private const double ThrownOfAny = 0.18; // mm

    /// <summary>Standard deviation of the sideways spread of what a printed sheet throws back, mm.</summary>
    /// <param name="thickness">mm, above 0.</param>
    public static double SpreadOfThrown(double thickness) => ThrownOfAny + (ThrownPerThickness * thickness);

    /// <summary>
    /// A printed sheet: T as <see cref="SurfaceOptics.Transmission"/> says, and R so that a sheet of any thickness throws back what a thick
    /// one, laid in layers, allows: R = a - sqrt(T2 + a2 - 1), a = (1 / Rthick + Rthick) / 2. Source: the two-flux theory of Kubelka and
    /// Munk. Typical until a printed coupon is measured; spools differ by a factor of two.
    /// </summary>
    /// <param name="thickness">mm, above 0.</param>
    /// <param name="plastic">What it is printed of.</param>
    public static DiffuserOptics Printed(double thickness, SurfaceOptics plastic)
    {
        double through = plastic.Transmission(thickness);
        double a = plastic.Reflectance > 0 ? ((1 / plastic.Reflectance) + plastic.Reflectance) / 2 : double.PositiveInfinity;
        double back = double.IsInfinity(a) ? 0 : a - Math.Sqrt((through * through) + (a * a) - 1);
        return new DiffuserOptics(
            through, Math.Clamp(back, 0, 1 - through), (SpreadOfAny + (SpreadPerThickness * thickness)) * (1 - through), plastic);
    }
}
