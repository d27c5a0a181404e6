namespace ShellForge.Geometry.Numerics;

/// <summary>
/// Every tolerance of the geometry, by kind. <em>Numeric</em> ones are as good as none: they stand for what double arithmetic
/// leaves over. <em>Modelling</em> ones say how far a polygon may stray from the curve it stands for. What a printer or a
/// supplier strays by (<em>making</em>) is no business of this project and comes from profiles.
/// </summary>
public static class Tolerances
{
    /// <summary>Modelling, mm: how far a chord may lie from its arc. A fifth of what a 0.05 mm motor step shows on a print.</summary>
    public const double ChordError = 0.01;

    /// <summary>Modelling: the fewest sides that stand for a full circle, so that a 1 mm pin still looks and measures round.</summary>
    public const int FewestSides = 32;

    /// <summary>
    /// Numeric, lattice steps: how far the fourth corner of a face made flat may lie from the plane of the other three after
    /// each corner was rounded by at most one step.
    /// </summary>
    public const double FlatnessSteps = 4;

    /// <summary>
    /// Numeric, lattice steps: a coordinate this close to a whole count is that count. 256 mm hold 2^24 steps and a double 53
    /// bits, so products of a few factors are good to 2^-27 steps.
    /// </summary>
    public const double WholeStep = 1e-6;

    /// <summary>
    /// Numeric, a bare share: three products and two sums in double precision err by less than 2^-50 of the sum of the products'
    /// sizes. A sum further from zero has the right sign; nearer, integers decide.
    /// </summary>
    public const double ThreeProductShare = 1.0 / (1L << 50);
}
