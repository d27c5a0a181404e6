using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Planning.Closures;

/// <summary>
/// Force that presses a snap bead over its wall, and how much of the ring may carry bead so that a hand can do it. The cover is tilted
/// as far as its lip reaches into the tub and pressed down from one side: what rides at once is the part of the bead that stands between
/// the rim and the groove at that moment.
/// </summary>
public static class SnapForce
{
    /// <summary>What a hand gives, N. Typical.</summary>
    public const double Hand = 150;

    /// <summary>Friction of dry plastic on plastic. Source: snap-fit design guides, 0.2 to 0.4.</summary>
    public const double Friction = 0.3;

    // Of a solid polymer, typical.
    private const double Poisson = 0.35;

    /// <summary>Planned below what a hand gives, so that the nominal fit is not the limit case. Typical.</summary>
    private const double Planned = 0.9 * Hand;

    // Pieces that a long bead is split into: three leave the cover a way to tilt, many are too short to hold.
    private const int Pieces = 6;

    // A cover that is held round less than this share of its rim lifts between the pieces.
    private const double LeastHeld = 0.5;

    // A shorter piece is a burr, mm.
    private const double LeastPiece = 6;

    // The cover may be pressed from any side, and is followed down in steps.
    private const int Sides = 12;
    private const int Depths = 120;

    /// <summary>
    /// Line load that widens the end of a round wall by a millimetre, N/mm per mm. Source: theory of thin shells, a long cylinder as a
    /// beam on the foundation of its hoops (E t / R^2), with a load near its free end; a load right at the end meets a quarter of the
    /// resistance of one far from it.
    /// </summary>
    /// <param name="radius">Radius of the wall, mm.</param>
    /// <param name="thickness">Its thickness, mm.</param>
    /// <param name="modulus">Modulus of the filament, MPa.</param>
    /// <param name="fromEnd">Distance of the load from the end, mm.</param>
    public static double EndStiffness(double radius, double thickness, double modulus, double fromEnd)
    {
        double hoops = modulus * thickness / (radius * radius);
        double decay = Math.Sqrt(Math.Sqrt(3 * (1 - (Poisson * Poisson)))) / Math.Sqrt(radius * thickness);
        double s = decay * fromEnd;
        double fade = Math.Exp(-s);
        var turn = Angle.FromRadians(s);
        double a = fade * (turn.Cos + turn.Sin);
        double b = fade * turn.Sin;
        double c = fade * (turn.Cos - turn.Sin);
        double d = fade * turn.Cos;
        return 2 * hoops / (decay * (1 + ((c + (2 * d)) * a) - (2 * (c + d) * b)));
    }

    /// <summary>
    /// Largest force along the axis while a tilted cover is pressed down, N, from the side where that takes most. Upper bound for the
    /// wall: a ring that is pressed over a part of its round also bends out of round.
    /// </summary>
    /// <param name="beads">What rides: the bead on the lip, and hooks at the bore.</param>
    /// <param name="leadIn">Angle of the leading flank to the axis.</param>
    /// <param name="tilt">How much lower one side of the cover stands than the other, mm.</param>
    internal static double Closing(ImmutableArray<RidingBead> beads, Angle leadIn, double tilt)
    {
        double outer = beads.Max(bead => bead.Radius);
        RidingBead.Riding[] riding = [.. beads.Select(bead => bead.Over(leadIn))];
        double travel = tilt + riding.Max(each => each.Run + each.Land);
        double[][] above =
        [
            .. beads.Select(bead => Enumerable.Range(0, RidingBead.Degrees)
                .Select(d => tilt / 2 * (1 - (bead.Radius / outer * Angle.FromDegrees(d).Cos))).ToArray()),
        ];
        double most = 0;
        for (int side = 0; side < Sides; side++)
        {
            for (int step = 1; step <= Depths; step++)
            {
                double deep = travel * step / Depths;
                double force = 0;
                for (int i = 0; i < beads.Length; i++)
                {
                    for (int d = 0; d < RidingBead.Degrees; d++)
                    {
                        int away = (d + (side * RidingBead.Degrees / Sides)) % RidingBead.Degrees;
                        force += beads[i].HasBead[d] ? riding[i].Load(deep - above[i][away]) : 0;
                    }
                }

                most = Math.Max(most, force);
            }
        }

        return most;
    }

    /// <summary>
    /// Force along the axis that presses a bead all round a small ring straight down, for each mm of overlap, N/mm; ring and lid give
    /// alike.
    /// </summary>
    /// <param name="radius">Radius of the ring, mm.</param>
    /// <param name="thickness">Thickness of its wall, mm.</param>
    /// <param name="modulus">Modulus of the filament, MPa.</param>
    /// <param name="fromEnd">Distance of the load from the wall's end, mm.</param>
    public static double RoundPerOverlap(double radius, double thickness, double modulus, double fromEnd) => Closing(
        [new RidingBead(radius, 1, 0, EndStiffness(radius, thickness, modulus, fromEnd) / 2, []).Without([])], SnapSection.LeadIn, 0);

    /// <summary>Share of a load across a flank that has to be pressed along the axis, friction included.</summary>
    /// <param name="flank">Angle of the flank to the axis.</param>
    internal static double AlongAxis(Angle flank)
    {
        double slope = flank.Sin / flank.Cos;
        return (slope + Friction) / (1 - (slope * Friction));
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
}
