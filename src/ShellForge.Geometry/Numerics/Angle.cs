namespace ShellForge.Geometry.Numerics;

/// <summary>An angle, counter-clockwise positive. Made and read by name only, so that no number is ever taken for the other unit.</summary>
public readonly record struct Angle
{
    private Angle(double degrees) => Degrees = degrees;

    /// <summary>The size in degrees, as given: not reduced to one turn.</summary>
    public double Degrees { get; }

    /// <summary>The size in radians.</summary>
    public double Radians => Degrees * (Math.PI / 180);

    /// <summary>Sine, exact at multiples of 90 degrees and the same on every platform.</summary>
    public double Sin => Trigonometry.SinDegrees(Degrees);

    /// <summary>Cosine, exact at multiples of 90 degrees and the same on every platform.</summary>
    public double Cos => Trigonometry.CosDegrees(Degrees);

    /// <summary>Zero.</summary>
    public static Angle Zero => default;

    /// <summary>A full turn.</summary>
    public static Angle FullTurn => new(360);

    /// <summary>The same direction within [0, 360) degrees.</summary>
    public Angle Normalized
    {
        get
        {
            double reduced = Degrees % 360;
            reduced = reduced < 0 ? reduced + 360 : reduced;
            return new Angle(reduced >= 360 ? 0 : reduced);
        }
    }

    /// <summary>An angle of so many degrees.</summary>
    public static Angle FromDegrees(double degrees) => new(degrees);

    /// <summary>An angle of so many radians.</summary>
    public static Angle FromRadians(double radians) => new(radians * (180 / Math.PI));

    /// <summary>The direction of a vector, in (-180, 180] degrees; zero for the zero vector.</summary>
    public static Angle Of(Point2 vector) => new(Trigonometry.Atan2Degrees(vector.Y, vector.X));

    /// <summary>The smallest turn, in [0, 180] degrees, between two directions.</summary>
    public static Angle Between(Angle a, Angle b)
    {
        double turn = (a - b).Normalized.Degrees;
        return new Angle(turn > 180 ? 360 - turn : turn);
    }

    /// <summary>Sum.</summary>
    public static Angle operator +(Angle a, Angle b) => new(a.Degrees + b.Degrees);

    /// <summary>Difference.</summary>
    public static Angle operator -(Angle a, Angle b) => new(a.Degrees - b.Degrees);

    /// <summary>Scaled by a factor.</summary>
    public static Angle operator *(double factor, Angle a) => new(factor * a.Degrees);

    /// <summary>For people: "12.5 degrees". Written out, since a record would print its own members without end.</summary>
    public override string ToString() => FormattableString.Invariant($"{Degrees} degrees");
}
