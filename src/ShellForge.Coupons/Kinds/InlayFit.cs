using System.Collections.Immutable;
using ShellForge.Coupons.Answers;
using ShellForge.Coupons.Drawing;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Coupons.Kinds;

/// <summary>A flat tile that is laid into seats of rising gaps, as a diffuser or a baffle is laid into a cover.</summary>
internal sealed class InlayFit : CouponKind
{
    private const int Columns = 5;
    private const double TileLength = 12;
    private const double TileWidth = 9;
    private const double TileHeight = 3;
    private const double Corner = 1;
    private const double Floor = 0.6;
    private const double SeatDepth = 2.4;
    private const double Air = 0.8;
    private const int RimLines = 2;

    // A tile this much looser than a lid that is pressed in can't need more room, mm.
    private const double Same = 0.051;

    /// <inheritdoc />
    public override string Name => "inlay-fit";

    /// <inheritdoc />
    public override string Tells => "the gap at which a flat part drops into its seat";

    /// <inheritdoc />
    public override string? Matters(HousingPlan plan) =>
        plan.Baffle is not null || plan.Diffuser.Fit is DiffuserFit.DropIn ? "baffle or diffuser is laid into the cover" : null;

    /// <inheritdoc />
    public override Coupon Draw(CouponWish wish)
    {
        PrintBasis basis = wish.Basis;
        ImmutableArray<double> gaps = GapSteps.Of(wish);
        double floor = basis.Up(Floor);
        double top = floor + basis.UpDistance(SeatDepth);
        double wall = basis.Wall(RimLines);
        double more = 2 * (gaps[^1] + wall);
        var grid = new StepGrid(gaps.Length, Columns, TileLength + more + Air, TileWidth + more + Air);
        var solids = new List<Solid> { Shapes.Extrude(grid.Plate, 0, floor) };
        var marks = new StepMarks(basis);
        for (int i = 0; i < gaps.Length; i++)
        {
            Point2 at = Lattice.Snap(grid.At(i));
            Region seat = Outline(at, gaps[i]);
            solids.Add(Shapes.Extrude(Outline(at, gaps[i] + wall).Less(seat), 0, top));
            marks.Add(gaps[i], Figures.Gap(gaps[i]), at, at, floor);
        }

        return new Coupon
        {
            Kind = this,
            Wish = wish,
            Pieces =
            [
                marks.Piece(Name + "-seats", Solid.Union([.. solids, .. marks.Solids])),
                new CouponPiece(Name + "-tile", Shapes.Extrude(Outline(Point2.Origin, 0), 0, basis.Up(TileHeight)), [], []),
            ],
            Hands =
            [
                "Clean the tile's edge that lay on the bed with a fingernail, as you do with a diffuser. Lay it onto each seat and let go, "
                    + "from the largest figure down. In the widest it must drop in: if it does not, check flow and first layer before you "
                    + "measure any fit.",
                "Where it lies in, push it to and fro with one finger.",
            ],
        };
    }

    /// <inheritdoc />
    public override ImmutableArray<Question> Questions(CouponWish wish) => Asked(wish).All;

    /// <inheritdoc />
    public override Reading Read(CouponWish wish, AnswerSheet answers)
    {
        ImmutableArray<double> gaps = GapSteps.Of(wish);
        FitJudgement judged = Asked(wish).Judge(answers);
        return judged.Fault is { } fault ? Reading.Wrong(fault)
            : judged.Value is { } fits
                ? new Reading
                {
                    Values = [MeasuredValue.OfPairing("inlay-fit", fits, "gap per side of a flat part in its seat")],
                }
            : GapSteps.Next(gaps, judged,
                $"the tile drops into no seat, not even {Figures.Gap(gaps[^1])}: check flow and first layer, then go on",
                $"the tile rattles at {Figures.Gap(gaps[0])} already: print it and its seats of one filament, in one setting");
    }

    /// <inheritdoc />
    public override IEnumerable<AnswerFault> Against(CouponWish wish, AnswerSheet answers, Reading own, MeasuredSoFar all)
    {
        if (own.Value("inlay-fit") is { } inlay && all.Of("lip-fit") is { } lip && inlay < lip - Same)
        {
            yield return new AnswerFault("fits", all.Told(
                "lip-fit", $"a tile can't drop into a seat at {inlay:0.00} where a lid must be pressed in at {lip:0.00}"));
        }
    }

    private static Region Outline(Point2 at, double gap) => Region.RoundedRectangle(
        at, TileLength + (2 * gap), TileWidth + (2 * gap), Corner + gap, RingSide.Outside);

    private static FitAnswers Asked(CouponWish wish) => new(
        new StepQuestion("tight", "The highest figure whose seat the tile does not drop into when you lay it on and tap the plate once",
            GapSteps.Of(wish)),
        new StepQuestion("fits",
            "The figure that fits: the tile drops in by itself or at one tap, and one finger moves it no more than you can just see",
            GapSteps.Of(wish)),
        new StepQuestion("loose", "The lowest figure at which the tile rattles, or a gap shows beside it", GapSteps.Of(wish)));
}
