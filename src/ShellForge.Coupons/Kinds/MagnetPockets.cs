using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Coupons.Answers;
using ShellForge.Coupons.Drawing;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Coupons.Kinds;

/// <summary>Pockets for the disc magnets of a housing, each a little wider than the one before.</summary>
internal sealed class MagnetPockets : CouponKind
{
    private const int Count = 10;
    private const int Columns = 5;
    private const double Step = 0.05;

    private const double Floor = 0.8;
    private const double Air = 1.2;

    // Two lines round a pocket that is never pressed apart; the magnet stands out of it so far that fingers get hold of it, mm.
    private const int RingLines = 2;
    private const double StandsOut = 0.8;

    /// <inheritdoc />
    public override string Name => "magnet-pockets";

    /// <inheritdoc />
    public override string Tells => "how much wider than a disc magnet its pocket is drawn";

    /// <inheritdoc />
    public override string? Matters(HousingPlan plan) => plan.Mount is MagnetMountPlan ? "it hangs on magnets" : null;

    /// <inheritdoc />
    public override Coupon Draw(CouponWish wish)
    {
        PrintBasis basis = wish.Basis;
        ImmutableArray<double> steps = Steps(wish);
        double floor = basis.Up(Floor);
        double top = floor + basis.UpDistance(MagnetSize.Nominal.Height - StandsOut);
        double wall = basis.Wall(RingLines);
        double figures = Figures.Height(basis);
        double widest = MagnetSize.Nominal.Diameter + steps[^1] + (2 * wall);
        var grid = new StepGrid(steps.Length, Columns, widest + Air, widest + figures + (2 * Air));
        var solids = new List<Solid> { Shapes.Extrude(grid.Plate, 0, floor) };
        var marks = new StepMarks(basis);
        for (int i = 0; i < steps.Length; i++)
        {
            Point2 at = Lattice.Snap(grid.At(i) + new Point2(0, (figures + Air) / 2));
            var pocket = Ring.Hole((MagnetSize.Nominal.Diameter + steps[i]) / 2);
            solids.Add(Shapes.Extrude(
                Region.Annulus(pocket.Coaxial(((MagnetSize.Nominal.Diameter + steps[i]) / 2) + wall, RingSide.Outside), pocket).Moved(at),
                0, top));
            string mark = Figures.Gap(steps[i]);
            marks.Add(steps[i], mark, at, at - new Point2(0, (widest + Air + figures) / 2), floor);
        }

        return new Coupon
        {
            Kind = this,
            Wish = wish,
            Pieces =
            [
                marks.Piece(Name, Solid.Union([.. solids, .. marks.Solids])),
            ],
            Hands =
            [
                $"Take one of the magnets that the housing gets, {MagnetSize.Nominal.Diameter:0.#} x {MagnetSize.Nominal.Height:0.#}. "
                    + "Press it into each pocket with one thumb, from the largest figure down; take it out by what stands out of the "
                    + "pocket.",
                "Where it goes in, turn the plate over and tap it once.",
            ],
            Cautions =
            [
                "Strong magnets pinch skin and chip when they meet: handle one at a time. Keep them away from implanted medical devices, "
                    + "and from children, who must not swallow them.",
            ],
        };
    }

    /// <inheritdoc />
    public override ImmutableArray<Question> Questions(CouponWish wish) => Asked(wish).All;

    /// <inheritdoc />
    public override Reading Read(CouponWish wish, AnswerSheet answers)
    {
        FitAnswers asked = Asked(wish);
        FitJudgement judged = asked.Judge(answers);
        return judged.Fault is { } fault ? Reading.Wrong(fault)
            : judged.Value is { } fits
                ? new Reading
                {
                    Values = [MeasuredValue.OfPairing("magnet-allowance", fits, "added to a magnet's pocket")],
                }
            : asked.IsLooseWithoutAir(answers)
                ? new Reading
                {
                    Notes =
                    [
                        $"the magnet is loose even in a pocket drawn {MagnetSize.Nominal.Diameter:0.##} mm wide: take one that measures as "
                            + "much, or set 'magnet-allowance' below 0 in your profile",
                    ],
                }
            : Reading.Farther(
                "magnet-allowance", judged.NextAround,
                $"the magnet goes into no pocket up to {MagnetSize.Nominal.Diameter + Steps(wish)[^1]:0.00} mm wide: measure it, and "
                    + $"try one of {MagnetSize.Nominal.Diameter:0.##} mm");
    }

    /// <inheritdoc />
    public override IEnumerable<AnswerFault> Against(CouponWish wish, AnswerSheet answers, Reading own, MeasuredSoFar all)
    {
        if (own.Value("magnet-allowance") is { } pocket && all.Of("hole-allowance") is { } hole)
        {
            double inHand = Math.Round(pocket - hole, 3);
            if (inHand is < -MostSqueeze or > MostPlay)
            {
                yield return new AnswerFault("fits", all.Told(
                    "hole-allowance",
                    $"a pocket drawn {pocket:0.00} mm wider comes out {Math.Abs(inHand):0.00} mm {(inHand < 0 ? "narrower" : "wider")} than "
                        + $"the magnet, since holes lose {hole:0.00} mm"));
            }
        }
    }

    // What a thumb presses a magnet of 8 +- 0.1 into, and what it still sits in without rattling, on the diameter, mm.
    private const double MostSqueeze = 0.2;
    private const double MostPlay = 0.25;

    private static ImmutableArray<double> Steps(CouponWish wish) =>
        wish.Around is { } around ? StepGrid.Around(around, Step, Count) : StepGrid.Rising(0, Step, Count);

    private static FitAnswers Asked(CouponWish wish)
    {
        ImmutableArray<double> steps = Steps(wish);
        return new FitAnswers(
            new StepQuestion("tight", "The highest figure whose pocket the magnet does not enter down to the floor under one thumb", steps),
            new StepQuestion("fits",
                "The figure that fits: the magnet goes down to the floor under light pressure of one thumb, and stays in when you turn the "
                    + "plate over and tap it once", steps),
            new StepQuestion("loose", "The lowest figure at which the magnet drops out by its own weight or rattles", steps));
    }
}
