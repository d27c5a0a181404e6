namespace ShellForge.Physics.Light;

/// <summary>
/// How much of the light from one direction gets into a sheet that scatters, over what gets in of light from everywhere: what comes square
/// to it passes the face more easily and starts deeper. What gets in is passed on or swallowed in the same shares from every direction, so
/// the rest is thrown back: R(mu) = 1 - w(mu) (1 - R).
/// </summary>
/// <remarks>
/// w(mu) = (1 - F(mu)) (e + mu') / its mean over diffuse light, F being Fresnel's share that the face throws back, mu' the cosine within
/// the plastic and e the extrapolation length in mean ways, (2 / 3) (1 + C2) / (1 - C1), with the means C1 and C2 of what the face throws
/// back inward weighed by cosine and by its square. Source: diffusion of light in a slab with faces. Without a face e is 2 / 3 and w is
/// (2 + 3 mu) / 4; any plastic's face keeps so much light in that w is within a hundredth the same for indices of 1.45 to 1.6.
/// </remarks>
internal sealed class SheetEntry
{
    private const int Steps = 256;

    // Refraction of PETG; of other printed plastics 1.45 to 1.59.
    private const double Index = 1.56;

    private static readonly double[] Plastic = Table();

    private readonly double[] _weights;

    /// <summary>The law of a sheet: no more goes in than comes, and a sheet that throws nothing back has neither face nor cloud.</summary>
    public SheetEntry(DiffuserOptics sheet)
    {
        double most = 1 / Math.Max(double.Epsilon, 1 - sheet.Reflectance);
        _weights = sheet.Reflectance > 0 ? [.. Plastic.Select(weight => Math.Min(weight, most))] : [.. Plastic.Select(_ => 1.0)];
    }

    /// <summary>The factor of a direction of incidence.</summary>
    /// <param name="cosine">To the sheet's normal, 0 to 1.</param>
    public double Of(double cosine)
    {
        double place = Math.Min(cosine, 1) * Steps;
        int below = (int)place;
        return _weights[below] + ((place - below) * (_weights[below + 1] - _weights[below]));
    }

    private static double[] Table()
    {
        double extrapolation = 2.0 / 3 * (1 + Mean(mu => 3 * mu * mu * Fresnel(mu, Index))) / (1 - Mean(mu => 2 * mu * Fresnel(mu, Index)));
        double Enters(double mu) =>
            (1 - Fresnel(mu, 1 / Index)) * (extrapolation + Math.Sqrt(1 - ((1 - (mu * mu)) / (Index * Index))));
        double diffuse = Mean(mu => 2 * mu * Enters(mu));
        double[] table = new double[Steps + 2];
        for (int i = 0; i < table.Length; i++)
        {
            table[i] = Enters(Math.Min(1, (double)i / Steps)) / diffuse;
        }

        return table;
    }

    private static double Mean(Func<double, double> of) => Enumerable.Range(0, 16 * Steps).Average(i => of((i + 0.5) / (16 * Steps)));

    // Share of unpolarised light that a face throws back; the ratio of indices is that of the side it comes from over the other.
    private static double Fresnel(double cosine, double ratio)
    {
        double sine = ratio * ratio * (1 - (cosine * cosine));
        if (sine >= 1)
        {
            return 1;
        }

        double other = Math.Sqrt(1 - sine);
        double along = ((ratio * cosine) - other) / ((ratio * cosine) + other);
        double across = (cosine - (ratio * other)) / (cosine + (ratio * other));
        return ((along * along) + (across * across)) / 2;
    }
}

/// <summary>Light on a sheet.</summary>
/// <param name="Falls">What falls on it.</param>
/// <param name="Enters">The same weighed by <see cref="SheetEntry"/>: what of diffuse light would get as much into it.</param>
internal readonly record struct LightOnSheet(double Falls, double Enters)
{
    public static LightOnSheet operator +(LightOnSheet a, LightOnSheet b) => new(a.Falls + b.Falls, a.Enters + b.Enters);

    public static LightOnSheet operator *(double share, LightOnSheet light) => new(share * light.Falls, share * light.Enters);

    /// <summary>What a sheet of this reflectance for diffuse light throws back.</summary>
    public double ThrownBack(double reflectance) => Falls - ((1 - reflectance) * Enters);
}
