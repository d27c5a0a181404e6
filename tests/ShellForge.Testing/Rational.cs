using System.Numerics;

namespace ShellForge.Testing;

/// <summary>A fraction of whole numbers of any size: slow, and never wrong by a bit.</summary>
public readonly struct Rational : IEquatable<Rational>, IComparable<Rational>
{
    private readonly BigInteger _numerator;
    private readonly BigInteger _denominatorLessOne;

    public Rational(BigInteger numerator, BigInteger denominator)
    {
        if (denominator.IsZero)
        {
            throw new DivideByZeroException();
        }

        BigInteger common = BigInteger.GreatestCommonDivisor(numerator, denominator) * denominator.Sign;
        _numerator = numerator / common;
        _denominatorLessOne = (denominator / common) - 1;
    }

    public static Rational Zero => default;

    public BigInteger Numerator => _numerator;

    public BigInteger Denominator => _denominatorLessOne + 1;

    public int Sign => _numerator.Sign;

    /// <summary>The exact value of a finite double.</summary>
    public static Rational FromDouble(double value)
    {
        long bits = BitConverter.DoubleToInt64Bits(value);
        int exponent = (int)((bits >> 52) & 0x7FF);
        long mantissa = bits & 0xFFFFFFFFFFFFF;
        if (exponent == 0x7FF)
        {
            throw new ArgumentOutOfRangeException(nameof(value));
        }

        mantissa = exponent == 0 ? mantissa : mantissa | (1L << 52);
        exponent = Math.Max(exponent, 1) - 1075;
        BigInteger signed = bits < 0 ? -mantissa : mantissa;
        return exponent >= 0 ? new Rational(signed << exponent, 1) : new Rational(signed, BigInteger.One << -exponent);
    }

    public static implicit operator Rational(int value) => new(value, 1);

    public static Rational operator +(Rational a, Rational b) =>
        new((a.Numerator * b.Denominator) + (b.Numerator * a.Denominator), a.Denominator * b.Denominator);

    public static Rational operator -(Rational a, Rational b) =>
        new((a.Numerator * b.Denominator) - (b.Numerator * a.Denominator), a.Denominator * b.Denominator);

    public static Rational operator -(Rational a) => new(-a.Numerator, a.Denominator);

    public static Rational operator *(Rational a, Rational b) => new(a.Numerator * b.Numerator, a.Denominator * b.Denominator);

    public static Rational operator /(Rational a, Rational b) => new(a.Numerator * b.Denominator, a.Denominator * b.Numerator);

    public static bool operator ==(Rational a, Rational b) => a.Equals(b);

    public static bool operator !=(Rational a, Rational b) => !a.Equals(b);

    public static bool operator <(Rational a, Rational b) => a.CompareTo(b) < 0;

    public static bool operator >(Rational a, Rational b) => a.CompareTo(b) > 0;

    public static bool operator <=(Rational a, Rational b) => a.CompareTo(b) <= 0;

    public static bool operator >=(Rational a, Rational b) => a.CompareTo(b) >= 0;

    public int CompareTo(Rational other) => (Numerator * other.Denominator).CompareTo(other.Numerator * Denominator);

    public bool Equals(Rational other) => Numerator == other.Numerator && Denominator == other.Denominator;

    public override bool Equals(object? obj) => obj is Rational other && Equals(other);

    public override int GetHashCode() => HashCode.Combine(_numerator, _denominatorLessOne);

    public double ToDouble() => Math.Exp(BigInteger.Log(BigInteger.Abs(Numerator)) - BigInteger.Log(Denominator)) * Sign;

    public override string ToString() => $"{Numerator}/{Denominator}";
}
