using System.Collections.Immutable;
using ShellForge.Coupons.Answers;
using ShellForge.Coupons.Drawing;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Coupons.Kinds;

/// <summary>
/// A small lid whose round lip is tried in rings of rising gaps; the widest must take it on every printer that is not out of order.
/// </summary>
internal sealed class LidFit : CouponKind
{
    private const int Columns = 5;
    private const double LipRadius = 6;
    private const double LipHeight = 2.4;
    private const double LidRadius = 8.5;
    private const double Lid = 1.6;
    private const double Floor = 0.6;
    private const double RingHeight = 3.2;
    private const double Air = 1.0;
    private const int Corners = 96;

    // A lip of three lines, as covers have; two are enough for a ring that is never pressed apart.
    private const int LipLines = 3;
    private const int RingLines = 2;

    /// <inheritdoc />
    public override string Name => "lid-fit";

    /// <inheritdoc />
    public override string Tells => "the gap at which a lid goes on and holds, and the one at which it turns";

    /// <inheritdoc />
    public override string? Matters(HousingPlan plan) => "the cover goes on by its lip";

    /// <inheritdoc />
    public override Coupon Draw(CouponWish wish)
    {
        PrintBasis basis = wish.Basis;
        ImmutableArray<double> gaps = GapSteps.Of(wish);
        double floor = basis.Up(Floor);
        double top = floor + basis.UpDistance(RingHeight);
        double wall = basis.Wall(RingLines);
        double pitch = (2 * (LipRadius + gaps[^1] + wall)) + Air;
        var grid = new StepGrid(gaps.Length, Columns, pitch, pitch);
        var solids = new List<Solid> { Shapes.Extrude(grid.Plate, 0, floor) };
        var marks = new StepMarks(basis);
        for (int i = 0; i < gaps.Length; i++)
        {
            Point2 at = Lattice.Snap(grid.At(i));
            var inner = new Ring(LipRadius + gaps[i], RingSide.Outside, Corners, Angle.Zero);
            Region ring = Region.Annulus(inner.Coaxial(LipRadius + gaps[i] + wall, RingSide.Outside), inner);
            solids.Add(Shapes.Extrude(ring.Moved(at), 0, top));
            marks.Add(gaps[i], Figures.Gap(gaps[i]), at, at, floor);
        }

        var outer = new Ring(LipRadius, RingSide.Inside, Corners, Angle.Zero);
        double lid = basis.Up(Lid);
        Solid gauge = Solid.Union(
            Shapes.Extrude(Region.Disc(Point2.Origin, outer.Coaxial(LidRadius, RingSide.Inside)), 0, lid),
            Shapes.Extrude(Region.Annulus(outer, outer.Coaxial(LipRadius - basis.Wall(LipLines), RingSide.Inside)), 0,
                lid + basis.UpDistance(LipHeight)));
        return new Coupon
        {
            Kind = this,
            Wish = wish,
            Pieces =
            [
                marks.Piece(Name + "-rings", Solid.Union([.. solids, .. marks.Solids])),
                new CouponPiece(Name + "-lid", gauge, [], []),
            ],
            Hands =
            [
                "Press the lid into each ring with one thumb, from the largest figure down. In the widest it must go in: if it does not, "
                    + "the first layers or the flow are out of order, and no fit is worth measuring.",
                "Where it goes in, turn the plate over and tap it once. Then turn the lid with two fingers.",
            ],
        };
    }

    /// <inheritdoc />
    public override ImmutableArray<Question> Questions(CouponWish wish) => [.. Asked(wish).All, Turns(wish)];

    /// <inheritdoc />
    public override Reading Read(CouponWish wish, AnswerSheet answers)
    {
        ImmutableArray<double> gaps = GapSteps.Of(wish);
        FitJudgement judged = Asked(wish).Judge(answers);
        if (judged.Fault is { } fault)
        {
            return Reading.Wrong(fault);
        }

        if (judged.Value is not { } fits)
        {
            return GapSteps.Next(gaps, judged,
                $"the lid goes into no ring, not even {Figures.Gap(gaps[^1])}: clean the edges that lay on the bed, check flow and first "
                    + "layer, then go on",
                $"the lid falls out at {Figures.Gap(gaps[0])} already: print it and its rings of one filament, in one setting");
        }

        StepQuestion turned = Turns(wish);
        int turns = answers.Step(turned);
        return turns >= 0 && gaps[turns] < fits
            ? Reading.Wrong(
                new AnswerFault(turned.Key,
                    $"the lid can't turn freely at {gaps[turns]:0.00} and need pressure at {fits:0.00}: try both again"))
            : new Reading
            {
                Values =
                [
                    MeasuredValue.OfPairing("lip-fit", fits, "gap per side of a lid's lip"),
                    .. turns < 0 ? Array.Empty<MeasuredValue>()
                        : [MeasuredValue.OfPairing("moving-fit", gaps[turns], "gap per side of what moves")],
                ],
                Notes = turns < 0 ? ["it turns freely in no ring: the gap for moving parts stays as it was"] : [],
            };
    }

    /// <inheritdoc />
    public override IEnumerable<AnswerFault> Against(CouponWish wish, AnswerSheet answers, Reading own, MeasuredSoFar all)
    {
        if (own.Value("lip-fit") is { } lip && all.Of("outer-allowance") is { } outer && all.Of("hole-allowance") is { } hole
            && BarGap.Doubt(lip, outer, hole, "lid", "ring") is { } doubt)
        {
            yield return new AnswerFault("fits", all.Told("hole-allowance", doubt));
        }
    }

    private static FitAnswers Asked(CouponWish wish) => new(
        new StepQuestion("tight", "The highest figure whose ring the lid does not enter down to its rim under one thumb",
            GapSteps.Of(wish)),
        new StepQuestion("fits",
            "The figure that fits: the lid goes in under light pressure of one thumb, and stays in when you turn the plate over and tap "
                + "it once", GapSteps.Of(wish)),
        new StepQuestion("loose", "The lowest figure at which the lid drops out by its own weight when you turn the plate over",
            GapSteps.Of(wish)));

    private static StepQuestion Turns(CouponWish wish) => new(
        "turns", "The lowest figure at which the lid turns all the way round between two fingers without scraping", GapSteps.Of(wish));
}
