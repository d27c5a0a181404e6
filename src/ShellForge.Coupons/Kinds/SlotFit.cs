using System.Collections.Immutable;
using ShellForge.Coupons.Answers;
using ShellForge.Coupons.Drawing;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Coupons.Kinds;

/// <summary>A tongue with a handle that is tried in slots of rising gaps.</summary>
internal sealed class SlotFit : CouponKind
{
    private const int Columns = 5;
    private const int TongueLines = 4;
    private const double TongueLength = 7;
    private const double TongueHeight = 4;
    private const double HandleLength = 12;
    private const double HandleWidth = 7;
    private const double HandleHeight = 3;
    private const double EndRoom = 0.8;
    private const double Floor = 0.6;
    private const double SlotDepth = 4;
    private const double Air = 1.2;

    /// <inheritdoc />
    public override string Name => "slot-fit";

    /// <inheritdoc />
    public override string Tells => "the gap at which a tongue slides into its slot";

    /// <inheritdoc />
    public override string? Matters(HousingPlan plan) => plan.Tongues.Any() ? "tongues of the cover close openings"
        : plan.Key.Rib is not null ? "a rib of the cover goes into its slot in the wall"
        : null;

    /// <inheritdoc />
    public override Coupon Draw(CouponWish wish)
    {
        PrintBasis basis = wish.Basis;
        ImmutableArray<double> gaps = GapSteps.Of(wish);
        double floor = basis.Up(Floor);
        double top = floor + basis.UpDistance(SlotDepth);
        double wall = basis.Wall(TongueLines);
        double tongue = basis.Wall(TongueLines);
        double figures = Figures.Height(basis);
        double length = TongueLength + (2 * EndRoom);
        double bar = tongue + (2 * (gaps[^1] + wall));
        double pitchX = length + wall;
        var grid = new StepGrid(gaps.Length, Columns, pitchX, bar + figures + (2 * Air));
        var solids = new List<Solid> { Shapes.Extrude(grid.Plate, 0, floor) };
        var slots = new List<Solid>();
        var marks = new StepMarks(basis);
        for (int i = 0; i < gaps.Length; i++)
        {
            Point2 at = Lattice.Snap(grid.At(i) + new Point2(0, (figures + Air) / 2));
            double half = (tongue / 2) + gaps[i];
            if (i % Columns == 0)
            {
                double reach = pitchX * Columns / 2;
                solids.Add(Shapes.Box(new Point3(-reach, at.Y - (bar / 2), 0), new Point3(reach, at.Y + (bar / 2), top)));
            }

            slots.Add(
                Shapes.Box(new Point3(at.X - (length / 2), at.Y - half, floor), new Point3(at.X + (length / 2), at.Y + half, top + 1)));
            marks.Add(gaps[i], Figures.Gap(gaps[i]), at, at - new Point2(0, ((bar + figures) / 2) + (Air / 2)), floor);
        }

        double handle = basis.Up(HandleHeight);
        Solid gauge = Solid.Union(
            Shapes.Extrude(Region.RoundedRectangle(Point2.Origin, HandleLength, HandleWidth, 1), 0, handle),
            Shapes.Box(new Point3(-TongueLength / 2, -tongue / 2, 0),
                new Point3(TongueLength / 2, tongue / 2, handle + basis.UpDistance(TongueHeight))));
        return new Coupon
        {
            Kind = this,
            Wish = wish,
            Pieces =
            [
                marks.Piece(Name + "-slots", Solid.Union(solids).Less(slots).And(marks.Solids)),
                new CouponPiece(Name + "-tongue", gauge, [], []),
            ],
            Hands =
            [
                "Hold the tongue by its block and push it into each slot, from the largest figure down. In the widest it must go in: if it "
                    + "does not, check flow and first layer before you measure any fit.",
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
                    Values =
                    [MeasuredValue.OfPairing("slot-fit", fits, "gap per side of a tongue in its slot")]
                }
            : GapSteps.Next(gaps, judged,
                $"the tongue goes into no slot, not even {Figures.Gap(gaps[^1])}: check flow and first layer, then go on",
                $"the tongue falls out at {Figures.Gap(gaps[0])} already: print it and its slots of one filament, in one setting");
    }

    /// <inheritdoc />
    public override IEnumerable<AnswerFault> Against(CouponWish wish, AnswerSheet answers, Reading own, MeasuredSoFar all)
    {
        if (own.Value("slot-fit") is { } fits && all.Of("outer-allowance") is { } outer && all.Of("slot-allowance") is { } slot
            && BarGap.Doubt(fits, outer, slot, "tongue", "slot") is { } doubt)
        {
            yield return new AnswerFault("fits", all.Told("slot-allowance", doubt));
        }
    }

    private static FitAnswers Asked(CouponWish wish) => new(
        new StepQuestion("tight",
            "The highest figure whose slot the tongue does not enter down to the block when you push with one thumb",
            GapSteps.Of(wish)),
        new StepQuestion("fits",
            "The figure that fits: the tongue slides in under light pressure and stays where it is when you turn the plate over",
            GapSteps.Of(wish)),
        new StepQuestion("loose", "The lowest figure at which the tongue drops out by its own weight or rattles", GapSteps.Of(wish)));
}
