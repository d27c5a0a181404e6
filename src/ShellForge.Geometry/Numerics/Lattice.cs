namespace ShellForge.Geometry.Numerics;

/// <summary>The grid that every vertex lies on.</summary>
public static class Lattice
{
    /// <summary>One lattice step in mm: 2^-16.</summary>
    public const double Step = 1.0 / StepsPerMillimetre;

    /// <summary>Steps in one mm.</summary>
    public const int StepsPerMillimetre = 1 << 16;

    /// <summary>The largest coordinate, in steps, inclusive: 256 mm.</summary>
    public const int Limit = 1 << 24;

    /// <summary>The largest coordinate in mm, inclusive.</summary>
    public const double LimitMillimetres = 256;

    /// <summary>
    /// The nearest count of steps; halves go up, so that moving a body by whole steps moves its vertices by just those.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or outside ±256 mm.</exception>
    public static int ToSteps(double millimetres)
    {
        double steps = Math.Floor((millimetres * StepsPerMillimetre) + 0.5);
        if (!(Math.Abs(steps) <= Limit))
        {
            throw new ArgumentOutOfRangeException(nameof(millimetres), millimetres, "A coordinate must lie within ±256 mm.");
        }

        return (int)steps;
    }

    /// <summary>The nearest lattice point.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or outside ±256 mm.</exception>
    public static LatticePoint3 ToLattice(Point3 point) => new(ToSteps(point.X), ToSteps(point.Y), ToSteps(point.Z));

    /// <summary>The millimetre value of the nearest lattice count.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or outside ±256 mm.</exception>
    public static double Snap(double millimetres) => ToSteps(millimetres) * Step;

    /// <summary>The point moved onto the lattice.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or outside ±256 mm.</exception>
    public static Point2 Snap(Point2 point) => new(Snap(point.X), Snap(point.Y));
}
