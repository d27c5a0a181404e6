using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Planning.Outlines;

/// <summary>
/// The slant that stands for an upper corner's arc of an opening in an upright wall, so that the opening prints without support:
/// <code>
///          across
///   ______________
///   roof          \          touches the arc in one point and goes past it on
///                  \   up    either side, so that nothing of the opening is lost
///                   \
///                    |  side
/// </code>
/// </summary>
/// <param name="Lean">How far it leans from the vertical, above 0 and below 90 degrees.</param>
public readonly record struct RoofSlant(Angle Lean)
{
    /// <summary>
    /// Kept from the printer's overhang: where the wall is curved, layers step out along it by up to 3 % more than across the slant, which
    /// is less than a degree; the rest is for shrinkage and lattice.
    /// </summary>
    private const double BelowOverhangDegrees = 3;

    // No slant is steeper than this: an arc would then print as well.
    private const double SteepestDegrees = 15;

    /// <summary>The slant for a printer.</summary>
    /// <param name="overhangDegrees">The largest overhang that it manages, degrees from the vertical.</param>
    public static RoofSlant For(double overhangDegrees) =>
        new(Angle.FromDegrees(Math.Max(SteepestDegrees, overhangDegrees - BelowOverhangDegrees)));

    /// <summary>Its leg along the roof, for each mm of the corner's radius.</summary>
    public double Across => Beyond / Lean.Cos;

    /// <summary>Its leg along the side, for each mm of the corner's radius.</summary>
    public double Up => Beyond / Lean.Sin;

    /// <summary>
    /// Corner radius of an opening for a plug, mm: as round as the plug's overmould is, and round enough that the flat of the roof between
    /// its slants can be bridged.
    /// </summary>
    /// <param name="size">Width and height of the opening, mm.</param>
    /// <param name="mouth">What the plug goes into.</param>
    /// <param name="bridged">Longest bridge that comes out clean, mm.</param>
    public double Corner((double Width, double Height) size, MouthProfile mouth, double bridged)
    {
        double roundness = mouth.RecessCornerRadius / (Math.Min(mouth.RecessWidth, mouth.RecessHeight) / 2);
        double half = Math.Min(size.Width, size.Height) / 2;
        double wanted = Math.Max(half * Math.Min(roundness, 1), (size.Width - bridged) / (2 * Across));
        return Math.Min(Math.Floor(100 * Math.Clamp(wanted, Math.Min(1, half), half)) / 100, half);
    }

    // The tangent of a circle at (1, 1) with radius 1 cuts the axes at these legs: from their distance to the middle.
    private double Beyond => Lean.Sin + Lean.Cos - 1;
}
