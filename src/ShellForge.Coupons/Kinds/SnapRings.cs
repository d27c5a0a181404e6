using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Coupons.Answers;
using ShellForge.Coupons.Drawing;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Closures;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Coupons.Kinds;

/// <summary>
/// A small lid with the bead of a snap closure that is pressed into rings of rising overlap on a scale. How much more force each ring takes
/// than the one before tells plastic and friction from what sizes stray by.
/// </summary>
internal sealed class SnapRings : CouponKind
{
    // Shares of what the filament bears repeatedly, from ring to ring.
    private static readonly ImmutableArray<double> Shares = [0.3, 0.55, 0.8];

    private const double Radius = 14;
    private const double BeadHeight = 0.6;
    private const double Lid = 1.2;
    private const double LidOver = 1.4;
    private const double Land = 0.6;

    // Pieces of bead round the lid, so evenly and so many that the ring widens rather than bends, and so short that a hand can press it.
    private const int BeadPieces = 6;
    private const double BeadDegrees = 12;
    private const double BeadRoot = 0.4;
    private const double LipBelow = 1;
    private const double Floor = 0.4;
    private const double RingHeight = 4.8;
    private const double Air = 1.5;
    private const double Link = 6;
    private const int WallLines = 2;
    private const int LipLines = 3;

    // Newtons on a scale that shows kilograms.
    private const double NewtonsPerKilogram = 9.81;
    private const double MostKilograms = 40;

    // A reading off the line of the others by more than this was misread: scales and hands stray by a few hundred grams, or a tenth.
    private const double StrayKilograms = 0.4;
    private const double StrayShare = 0.15;

    // Plastic and friction differ from what data sheets say by no more than this.
    private const double LeastShare = 0.2;
    private const double MostShare = 4;

    // The overlap that forces point to, and the one that the bar points to, mm.
    private const double MostApart = 0.15;

    /// <inheritdoc />
    public override string Name => "snap-rings";

    /// <inheritdoc />
    public override string Tells => "the force that closes a snap bead";

    /// <inheritdoc />
    public override string? Matters(HousingPlan plan) => plan.Closure is SnapClosurePlan ? "the cover snaps on" : null;

    /// <inheritdoc />
    public override Coupon Draw(CouponWish wish)
    {
        PrintBasis basis = wish.Basis;
        ImmutableArray<double> overlaps = Overlaps(wish);
        double floor = basis.Up(Floor);
        double top = floor + basis.UpDistance(RingHeight);
        double wall = basis.Wall(WallLines);
        double pitch = (2 * (Radius + wall)) + Air;
        var grid = new StepGrid(overlaps.Length, overlaps.Length, pitch, pitch);
        var solids = new List<Solid>
        {
            Shapes.Extrude(Region.Slot(grid.At(0), grid.At(overlaps.Length - 1), Link), 0, floor),
        };
        var marks = new StepMarks(basis);
        for (int i = 0; i < overlaps.Length; i++)
        {
            Point2 at = Lattice.Snap(grid.At(i));
            Ring inner = Ring.Hole(Radius - overlaps[i]);
            Ring outer = inner.Coaxial(Radius - overlaps[i] + wall, RingSide.Outside);
            solids.Add(Shapes.Extrude(Region.Disc(at, outer), 0, floor));
            solids.Add(Shapes.Extrude(Region.Annulus(outer, inner).Moved(at), 0, top));
            string mark = Figures.Gap(overlaps[i]);
            marks.Add(overlaps[i], mark, at, at, floor);
        }

        return new Coupon
        {
            Kind = this,
            Wish = wish,
            Pieces =
            [
                marks.Piece(Name + "-rings", Solid.Union([.. solids, .. marks.Solids])),
                new CouponPiece(Name + "-lid", LidSolid(basis), [], []),
            ],
            Hands =
            [
                "Put the plate on a bathroom scale that shows tenths of a kilogram, and set it to zero, or take what it shows off each "
                    + "reading.",
                "Lay the lid onto the ring with the smallest figure, a block of wood on it, and press straight down, slowly, until the lid "
                    + "sits on the rim. Read the highest weight on the way. Do that three times and write down the middle reading; then take "
                    + "the next ring.",
                "Push the lid out again from the side with a thumb; do not lever.",
            ],
        };
    }

    /// <inheritdoc />
    public override ImmutableArray<Question> Questions(CouponWish wish) => [.. Pushes(wish)];

    /// <inheritdoc />
    public override Reading Read(CouponWish wish, AnswerSheet answers)
    {
        ImmutableArray<double> overlaps = Overlaps(wish);
        ImmutableArray<WeightQuestion> pushes = Pushes(wish);
        double[] kilograms = [.. pushes.Select(answers.Weight)];
        for (int i = 1; i < kilograms.Length; i++)
        {
            if (kilograms[i] < kilograms[i - 1] - StrayKilograms)
            {
                return Reading.Wrong(new AnswerFault(pushes[i].Key,
                    $"{kilograms[i]:0.0} kg is less than the {kilograms[i - 1]:0.0} kg of the ring before, which overlaps less: press both "
                        + "again"));
            }
        }

        (double slope, double at) = Line(overlaps, kilograms);
        for (int i = 0; i < kilograms.Length; i++)
        {
            double expected = Math.Max(0, slope * (overlaps[i] - at));
            if (Math.Abs(kilograms[i] - expected) > StrayKilograms + (StrayShare * expected))
            {
                return Reading.Wrong(new AnswerFault(pushes[i].Key,
                    $"{kilograms[i]:0.0} kg where the other rings say {expected:0.0} kg: press it again"));
            }
        }

        double share = slope * NewtonsPerKilogram / ForcePerOverlap(wish);
        return !(share is >= LeastShare and <= MostShare)
            ? Reading.Wrong(new AnswerFault(pushes[^1].Key,
                $"that is {Math.Max(0, share):0.00} times the computed force, and no {wish.Filament.Name} does that: read the scale in kg, "
                    + "the plate flat on it"))
            : new Reading
            {
                Values =
                [
                    MeasuredValue.OfPairing("snap-force", Math.Round(share, 2), "force of a snap, share of the computed"),
                ],
            };
    }

    /// <inheritdoc />
    public override IEnumerable<AnswerFault> Against(CouponWish wish, AnswerSheet answers, Reading own, MeasuredSoFar all)
    {
        if (all.Of("outer-allowance") is { } outer && all.Of("hole-allowance") is { } hole)
        {
            ImmutableArray<WeightQuestion> pushes = Pushes(wish);
            double more = -Line(Overlaps(wish), [.. pushes.Select(answers.Weight)]).At;
            double byBar = (hole - outer) / 2;
            if (Math.Abs(more - byBar) > MostApart)
            {
                yield return new AnswerFault(pushes[0].Key, all.Told("hole-allowance",
                    $"forces say that lid and ring overlap by {more:+0.00;-0.00;0.00} mm beyond the drawing, calipers say "
                        + $"{byBar:+0.00;-0.00;0.00} mm"));
            }
        }
    }

    // Least squares through what moved the scale, and where that line meets no force.
    private static (double Slope, double At) Line(ImmutableArray<double> overlaps, double[] kilograms)
    {
        int first = Math.Clamp(Array.FindIndex(kilograms, weight => weight > 0), 0, kilograms.Length - 2);
        double[] x = [.. overlaps.Skip(first)];
        double[] y = [.. kilograms.Skip(first)];
        double meanX = x.Average();
        double meanY = y.Average();
        double slope = x.Zip(y, (a, b) => (a - meanX) * (b - meanY)).Sum() / x.Sum(a => (a - meanX) * (a - meanX));
        return (slope, slope > 0 ? meanX - (meanY / slope) : 0);
    }

    // Newtons per mm of overlap, as the plan computes them for a cover that is pressed straight down.
    private static double ForcePerOverlap(CouponWish wish)
    {
        double fromEnd = LipBelow + (SnapSection.Run(BeadHeight, SnapSection.LeadIn) / 2);
        return BeadPieces * BeadDegrees / 360
            * SnapForce.RoundPerOverlap(Radius, wish.Basis.Wall(WallLines), wish.Filament.ModulusMegapascals, fromEnd);
    }

    private static Solid LidSolid(PrintBasis basis)
    {
        double lid = basis.Up(Lid);
        double lip = Radius - BeadHeight;
        double hold = SnapSection.Run(BeadHeight, SnapSection.Hold);
        double leadIn = SnapSection.Run(BeadHeight, SnapSection.LeadIn);
        double from = lid + Land;
        double end = lid + basis.UpDistance(Land + hold + SnapSection.Crest + leadIn + LipBelow);
        int corners = Ring.Peg(Radius).Count;
        double inside = lip - basis.Wall(LipLines);
        double crest = from + hold + SnapSection.Crest;
        Solid Turned(params Point2[] section) => Shapes.Revolve(section, corners, Angle.Zero, RingSide.Inside);

        // Both flanks go on into the lip, so that the pieces fuse with it.
        Solid bead = Turned(
            new(lip - BeadRoot, from - (BeadRoot * hold / BeadHeight)), new(Radius, from + hold), new(Radius, crest),
            new(lip - BeadRoot, crest + (leadIn * (1 + (BeadRoot / BeadHeight)))));
        Region pieces = Region.Union(Enumerable.Range(0, BeadPieces).Select(i => Region.Sector(
            lip - (BeadRoot / 2), Radius + 1, Angle.FromDegrees((360.0 * i / BeadPieces) - (BeadDegrees / 2)),
            Angle.FromDegrees(BeadDegrees))));
        return Solid.Union(
            Shapes.Extrude(Region.Disc(Point2.Origin, Ring.Peg(Radius + LidOver)), 0, lid),
            Turned(new(inside, lid / 2), new(lip, lid / 2), new(lip, end), new(inside, end)),
            Solid.Intersection(bead, Shapes.Extrude(pieces, lid / 2, end)));
    }

    private static ImmutableArray<double> Overlaps(CouponWish wish) =>
        [.. Shares.Select(share => Math.Round(share * wish.Filament.StrainAlongLayers * Radius, 2, MidpointRounding.AwayFromZero))];

    private static ImmutableArray<WeightQuestion> Pushes(CouponWish wish) =>
    [
        .. Overlaps(wish).Select(overlap => new WeightQuestion(
            string.Create(CultureInfo.InvariantCulture, $"push-{overlap:0.00}"),
            $"The highest weight while the lid goes into the ring marked {Figures.Gap(overlap)}, kg; 0 where it drops in", MostKilograms)),
    ];
}
