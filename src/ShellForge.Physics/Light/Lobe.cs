using ShellForge.Geometry.Numerics;

namespace ShellForge.Physics.Light;

/// <summary>
/// A cosine-power lobe of unit flux: I(a) = (m + 1) / (2 pi) * cos(a)^m ahead of the LED, nothing behind it, with
/// m = ln 0.5 / ln cos(half the viewing angle). 120 degrees give m = 1, a Lambert emitter.
/// Source: the usual emitter model of LED data sheets, which state the angle at half intensity.
/// </summary>
public sealed class Lobe
{
    private const int Steps = 1024;

    private readonly double[] _table;

    /// <summary>The lobe of a full viewing angle in degrees, above 0 and below 180.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The angle is outside that range.</exception>
    public Lobe(double viewingAngleDegrees)
    {
        if (!(viewingAngleDegrees > 0 && viewingAngleDegrees < 180))
        {
            throw new ArgumentOutOfRangeException(nameof(viewingAngleDegrees), "A viewing angle lies between 0 and 180 degrees.");
        }

        Exponent = Math.Log(0.5) / Math.Log(Trigonometry.CosDegrees(viewingAngleDegrees / 2));
        _table = new double[Steps + 2];
        for (int i = 0; i < _table.Length; i++)
        {
            _table[i] = (Exponent + 1) / (2 * Math.PI) * Math.Pow((double)i / Steps, Exponent);
        }
    }

    /// <summary>The exponent m.</summary>
    public double Exponent { get; }

    /// <summary>Flux in a steradian, as a share of the LED's flux, at a cosine to the axis; 0 behind the LED.</summary>
    public double Intensity(double cosine)
    {
        if (cosine <= 0)
        {
            return 0;
        }

        double place = Math.Min(cosine, 1) * Steps;
        int below = (int)place;
        double share = place - below;
        return _table[below] + (share * (_table[below + 1] - _table[below]));
    }
}
