using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Planning.Closures;

/// <summary>Force that presses a snap bead over its wall, and how much of the ring may carry bead so that a hand can do it.</summary>
public static class SnapForce
{
    /// <summary>What a hand gives, N. Typical.</summary>
    public const double Hand = 150;

    /// <summary>A hand presses a ring closed piece by piece, about a fifth of it at a time. Typical: try it on a coupon.</summary>
    private const double PressedShare = 0.2;
    private const double Friction = 0.3;
    private const double LeadInDegrees = 35;

    /// <summary>Planned below what a hand gives, so that the nominal fit is not the limit case. Typical.</summary>
    private const double Planned = 0.9 * Hand;

    // Pieces that a long bead is split into: three leave the cover a way to tilt, many are too short to hold.
    private const int Pieces = 6;

    // A cover that is held round less than this share of its rim lifts between the pieces.
    private const double LeastHeld = 0.5;

    // A shorter piece is a burr, mm.
    private const double LeastPiece = 6;

    /// <summary>
    /// Force along the axis that rides the bead over piece by piece, N. Lip and wall give in series, each as a ring as wide as its
    /// bending length.
    /// </summary>
    /// <param name="interference">Overlap per side, mm.</param>
    /// <param name="radius">Inner radius of the wall, mm.</param>
    /// <param name="lip">Thickness of the lip, mm.</param>
    /// <param name="wall">Thickness of the wall, mm.</param>
    /// <param name="modulus">Modulus of the filament, MPa.</param>
    /// <param name="gaps">Sectors without bead.</param>
    public static double Closing(
        double interference, double radius, double lip, double wall, double modulus, IEnumerable<(Angle From, Angle Sweep)> gaps)
    {
        double stiffness = 1 / ((1 / Stiffness(radius, lip, modulus)) + (1 / Stiffness(radius, wall, modulus)));
        double held = 1 - (Merged(gaps).Sum(gap => gap.To - gap.From) / 360);
        double radial = stiffness * interference * 2 * Math.PI * radius * held * PressedShare;
        double slope = Angle.FromDegrees(LeadInDegrees).Sin / Angle.FromDegrees(LeadInDegrees).Cos;
        return radial * (slope + Friction) / (1 - (slope * Friction));
    }

    /// <summary>
    /// Gaps that leave a bead which a hand closes: those that must be, and where they leave too much, even ones that start in the
    /// middle of the first.
    /// </summary>
    internal static ImmutableArray<(Angle From, Angle Sweep)> Split(
        ImmutableArray<(Angle From, Angle Sweep)> gaps, double radius, Func<IEnumerable<(Angle From, Angle Sweep)>, double> force)
    {
        if (force(gaps) <= Hand)
        {
            return gaps;
        }

        Angle first = gaps.Length > 0 ? gaps[0].From + (0.5 * gaps[0].Sweep) : Angle.Zero;
        for (int percent = 5; percent <= 100 * (1 - LeastHeld); percent += 5)
        {
            Angle sweep = Angle.FromDegrees(3.6 * percent / Pieces);
            IEnumerable<(Angle, Angle)> even = Enumerable.Range(0, Pieces)
                .Select(i => ((first + Angle.FromDegrees(360.0 * i / Pieces) - (0.5 * sweep)).Normalized, sweep));
            ImmutableArray<(Angle From, Angle Sweep)> split = WithoutBurrs(Merged([.. gaps, .. even]), radius);
            if (force(split) <= Planned)
            {
                return split;
            }
        }

        return gaps;
    }

    // A piece between two gaps that is too short to be one goes to the gap before it.
    private static ImmutableArray<(Angle From, Angle Sweep)> WithoutBurrs(List<(double From, double To)> merged, double radius)
    {
        double least = Angle.FromRadians(LeastPiece / radius).Degrees;
        IEnumerable<(double From, double To)> wider = merged.Select((gap, i) =>
        {
            double next = i + 1 < merged.Count ? merged[i + 1].From : merged[0].From + 360;
            return next - gap.To < least ? (gap.From, next) : gap;
        });
        return [.. Merged(wider.Select(w => (Angle.FromDegrees(w.From), Angle.FromDegrees(w.To - w.From))))
            .Select(w => (Angle.FromDegrees(w.From).Normalized, Angle.FromDegrees(w.To - w.From)))];
    }

    // Sectors in degrees, joined where they touch; the one across zero stays in one piece and reaches past 360.
    private static List<(double From, double To)> Merged(IEnumerable<(Angle From, Angle Sweep)> sectors)
    {
        var merged = new List<(double From, double To)>();
        foreach ((double from, double to) in sectors
            .Select(s => (From: s.From.Normalized.Degrees, To: s.From.Normalized.Degrees + s.Sweep.Degrees)).OrderBy(s => s.From))
        {
            if (merged.Count > 0 && from <= merged[^1].To)
            {
                merged[^1] = (merged[^1].From, Math.Max(merged[^1].To, to));
            }
            else
            {
                merged.Add((from, to));
            }
        }

        while (merged.Count > 1 && merged[^1].To - 360 >= merged[0].From)
        {
            merged[^1] = (merged[^1].From, Math.Max(merged[^1].To, merged[0].To + 360));
            merged.RemoveAt(0);
        }

        return merged;
    }

    // Radial line load per mm of give: E t w / R^2 with the ring as wide as the wall bends along the axis.
    private static double Stiffness(double radius, double thickness, double modulus) =>
        modulus * thickness * 0.78 * Math.Sqrt(radius * thickness) / (radius * radius);
}
