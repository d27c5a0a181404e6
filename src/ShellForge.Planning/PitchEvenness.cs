using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Planning;

/// <summary>
/// How even a parallel diffuser is lit along a pitch circle, in closed form: LEDs with a cosine-power lobe, no walls, no scatter
/// inside the sheet. It errs on the dark side of even: reflecting walls and the sheet's own scatter only smooth.
/// Source: E = h^(m+1) / (h^2 + r^2)^((m+3)/2) summed over the LEDs, m = ln 0.5 / ln cos(half viewing angle).
/// </summary>
internal static class PitchEvenness
{
    private const int SamplesPerPitch = 24;

    // The middle of a cell that is judged; its rim is the wall's shadow in any case.
    private const double JudgedShareOfCell = 0.8;

    // Search bounds and step, mm.
    private const double Least = 1;
    private const double Step = 0.1;

    /// <summary>Smallest over mean irradiance along the circle, 0 to 1, when all its LEDs shine.</summary>
    /// <param name="circle">The LEDs.</param>
    /// <param name="distance">From the LEDs' windows to the diffuser, mm, above 0.</param>
    /// <param name="look">Blend: all LEDs add up. Pixels: each cell is lit by its own LED alone.</param>
    public static double MinimumOverMean(PixelCircle circle, double distance, LightLook look)
    {
        double exponent = Exponent(circle.Led.ViewingAngleDegrees);
        double share = look == LightLook.Pixels ? JudgedShareOfCell : 1;
        double pitch = LitBand.PitchOf(circle);
        double radius = circle.Count > 1 ? circle.Diameter / 2 : 0;
        double least = double.PositiveInfinity;
        double sum = 0;
        for (int i = 0; i < SamplesPerPitch; i++)
        {
            double along = share * (((i + 0.5) / SamplesPerPitch) - 0.5);
            double light = look == LightLook.Pixels || radius == 0
                ? Irradiance(distance, along * pitch * along * pitch, exponent)
                : OfAll(circle.Count, radius, along, distance, exponent);
            least = Math.Min(least, light);
            sum += light;
        }

        return least * SamplesPerPitch / sum;
    }

    /// <summary>The smallest distance, in steps of 0.1 mm, at which every circle is as even as asked; the largest when none is.</summary>
    public static double DistanceFor(IReadOnlyList<PixelCircle> circles, double minimumOverMean, LightLook look, double most)
    {
        double distance = Least;
        while (distance < most && circles.Any(circle => MinimumOverMean(circle, distance, look) < minimumOverMean))
        {
            distance += Step;
        }

        return Math.Min(distance, most);
    }

    private static double OfAll(int count, double radius, double along, double distance, double exponent)
    {
        Point2 place = Point2.Polar(radius, Angle.FromDegrees(360 * along / count));
        double sum = 0;
        for (int k = 0; k < count; k++)
        {
            Point2 apart = place - Point2.Polar(radius, Angle.FromDegrees(360.0 * k / count));
            sum += Irradiance(distance, Point2.Dot(apart, apart), exponent);
        }

        return sum;
    }

    private static double Irradiance(double distance, double offsetSquared, double exponent) =>
        Math.Pow(distance, exponent + 1) / Math.Pow((distance * distance) + offsetSquared, (exponent + 3) / 2);

    private static double Exponent(double viewingAngleDegrees) =>
        Math.Log(0.5) / Math.Log(Angle.FromDegrees(Math.Clamp(viewingAngleDegrees, 10, 170) / 2).Cos);
}
