namespace ShellForge.Geometry.Numerics;

/// <summary>
/// Sine, cosine and arc tangent from additions, multiplications and divisions alone. IEEE 754 fixes those to the last bit,
/// which the platform's own functions do not, so the same board gives the same bytes on every machine.
/// Errors stay below 4e-16 relative to 1.
/// </summary>
public static class Trigonometry
{
    private const double HalfPi = Math.PI / 2;

    /// <summary>Sine of an angle in degrees; exact at multiples of 90.</summary>
    public static double SinDegrees(double degrees)
    {
        (int quadrant, double radians) = Reduce(degrees);
        return quadrant switch
        {
            0 => SinSeries(radians),
            1 => CosSeries(radians),
            2 => -SinSeries(radians),
            _ => -CosSeries(radians),
        };
    }

    /// <summary>Cosine of an angle in degrees; exact at multiples of 90.</summary>
    public static double CosDegrees(double degrees)
    {
        (int quadrant, double radians) = Reduce(degrees);
        return quadrant switch
        {
            0 => CosSeries(radians),
            1 => -SinSeries(radians),
            2 => -CosSeries(radians),
            _ => SinSeries(radians),
        };
    }

    /// <summary>Direction of (x, y) in degrees, in (-180, 180]; exact on the axes; 0 at the origin.</summary>
    public static double Atan2Degrees(double y, double x)
    {
        if (x == 0 && y == 0)
        {
            return 0;
        }

        double ax = Math.Abs(x);
        double ay = Math.Abs(y);
        double first = ay <= ax ? AtanUnit(ay / ax) : HalfPi - AtanUnit(ax / ay);
        double degrees = ay == 0 ? 0 : ax == 0 ? 90 : ay == ax ? 45 : first * (180 / Math.PI);
        degrees = x < 0 ? 180 - degrees : degrees;
        return y < 0 ? -degrees : degrees;
    }

    /// <summary>Arc cosine in degrees, for a value in [-1, 1].</summary>
    public static double AcosDegrees(double cosine) =>
        Atan2Degrees(Math.Sqrt(Math.Max(0, (1 - cosine) * (1 + cosine))), cosine);

    // The angle within 45 degrees of a multiple of 90, and which multiple. The remainder is exact.
    private static (int Quadrant, double Radians) Reduce(double degrees)
    {
        double turn = Math.IEEERemainder(degrees, 360);
        double quarter = Math.Round(turn / 90, MidpointRounding.ToEven);
        double rest = turn - (quarter * 90);
        return ((int)quarter & 3, rest * (Math.PI / 180));
    }

    // Taylor series; at 45 degrees the first term left out is below 1e-18.
    private static double SinSeries(double x)
    {
        double s = x * x;
        double sum = 1 - (s / 272);
        for (int k = 15; k >= 3; k -= 2)
        {
            sum = 1 - (s / (k * (k - 1)) * sum);
        }

        return x * sum;
    }

    private static double CosSeries(double x)
    {
        double s = x * x;
        double sum = 1 - (s / 306);
        for (int k = 16; k >= 2; k -= 2)
        {
            sum = 1 - (s / (k * (k - 1)) * sum);
        }

        return sum;
    }

    // Two halvings bring the argument of [0, 1] below 0.2; the series then needs 11 terms.
    private static double AtanUnit(double t)
    {
        double half = t / (1 + Math.Sqrt(1 + (t * t)));
        double quarter = half / (1 + Math.Sqrt(1 + (half * half)));
        double s = quarter * quarter;
        double sum = 0;
        for (int k = 25; k >= 1; k -= 2)
        {
            sum = (1.0 / k) - (s * sum);
        }

        return 4 * quarter * sum;
    }
}
