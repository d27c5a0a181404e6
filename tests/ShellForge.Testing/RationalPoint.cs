using ShellForge.Geometry.Numerics;

namespace ShellForge.Testing;

/// <summary>A point or vector of exact fractions.</summary>
public readonly record struct RationalPoint(Rational X, Rational Y, Rational Z)
{
    public bool IsZero => X.Sign == 0 && Y.Sign == 0 && Z.Sign == 0;

    public static RationalPoint From(Point3 p) => new(Rational.FromDouble(p.X), Rational.FromDouble(p.Y), Rational.FromDouble(p.Z));

    public static RationalPoint From(LatticePoint3 p) => new(p.X, p.Y, p.Z);

    public static RationalPoint operator +(RationalPoint a, RationalPoint b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    public static RationalPoint operator -(RationalPoint a, RationalPoint b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    public static RationalPoint operator *(Rational factor, RationalPoint a) => new(factor * a.X, factor * a.Y, factor * a.Z);

    public static Rational Dot(RationalPoint a, RationalPoint b) => (a.X * b.X) + (a.Y * b.Y) + (a.Z * b.Z);

    public static RationalPoint Cross(RationalPoint a, RationalPoint b) =>
        new((a.Y * b.Z) - (a.Z * b.Y), (a.Z * b.X) - (a.X * b.Z), (a.X * b.Y) - (a.Y * b.X));
}
