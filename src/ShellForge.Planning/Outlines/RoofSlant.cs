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

    // Kept between the corners of an overmould and its recess, mm: the rule wants 0.1, the rest is for shrinkage and lattice.
    private const double CornerRoom = 0.15;

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
    /// Corner radius of a recess that a plug's overmould enters, mm: as the profile has it and no rounder than the overmould with its room
    /// about it, then round enough that the flat of the roof between its slants can be bridged, as far as the overmould's corners still
    /// pass.
    /// </summary>
    /// <param name="size">Width and height of the recess, mm.</param>
    /// <param name="mouth">What the plug goes into.</param>
    /// <param name="bridged">Longest bridge that comes out clean, mm.</param>
    public double PlugCorner((double Width, double Height) size, MouthProfile mouth, double bridged)
    {
        double half = Math.Min(size.Width, size.Height) / 2;
        double plug = Math.Min(mouth.PlugCornerRadius, Math.Min(mouth.PlugWidth, mouth.PlugHeight) / 2);
        double beside = Math.Max(0, size.Width - mouth.PlugWidth) / 2;
        double above = Math.Max(0, size.Height - mouth.PlugHeight) / 2;
        double least = Math.Min(1, half);
        double passing = Math.Max(plug + Rounder(beside, above), Math.Min(plug, least));
        double asPlug = Math.Min(half * Math.Min(RoundnessOf(mouth), 1), plug + Math.Min(beside, above));
        double wanted = Math.Max(asPlug, (size.Width - bridged) / (2 * Across));
        return Math.Min(Math.Floor(100 * Math.Min(Math.Clamp(wanted, least, half), passing)) / 100, half);
    }

    // How much rounder than a plug's corner that of its recess may be, mm, so that both keep their room: the corners' centres lie apart by
    // that less the gaps, and what the plug reaches beyond its own centre must stay within the recess's radius.
    private static double Rounder(double beside, double above)
    {
        double both = beside + above - CornerRoom;
        double root = (both * both) - ((beside * beside) + (above * above) - (CornerRoom * CornerRoom));
        return both <= 0 || root < 0 ? 0 : both + Math.Sqrt(root);
    }

    /// <summary>
    /// Corner radius of an opening for a plug's metal nose, mm: as round as the profile has it, and round enough that the flat of the roof
    /// between its slants can be bridged.
    /// </summary>
    /// <param name="size">Width and height of the opening, mm.</param>
    /// <param name="mouth">What the plug goes into.</param>
    /// <param name="bridged">Longest bridge that comes out clean, mm.</param>
    public double Corner((double Width, double Height) size, MouthProfile mouth, double bridged)
    {
        double roundness = RoundnessOf(mouth);
        double half = Math.Min(size.Width, size.Height) / 2;
        double wanted = Math.Max(half * Math.Min(roundness, 1), (size.Width - bridged) / (2 * Across));
        return Math.Min(Math.Floor(100 * Math.Clamp(wanted, Math.Min(1, half), half)) / 100, half);
    }

    private static double RoundnessOf(MouthProfile mouth) =>
        mouth.RecessCornerRadius / (Math.Min(mouth.RecessWidth, mouth.RecessHeight) / 2);

    // The tangent of a circle at (1, 1) with radius 1 cuts the axes at these legs: from their distance to the middle.
    private double Beyond => Lean.Sin + Lean.Cos - 1;
}
