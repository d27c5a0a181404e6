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
/// Walls that an AA cell is stood between, each two a little farther apart. Any battery's bay is then made as much wider than the
/// battery as fitted here: calipers tell how wide the cell at hand is, since cells of one name differ by a millimetre.
/// </summary>
internal sealed class BatteryBays : CouponKind
{
    private const int Count = 12;
    private const int Columns = 4;
    private const double Step = 0.05;
    private const double First = 0.4;

    // Walls stand apart by this and their figure, mm: the thinnest cells have play there already, where slots lose nothing.
    private const double Base = 14.0;

    // What AA cells are wide, what most are, and how far calipers may read off that, mm. Source: IEC 60086-2.
    private const double Thinnest = 13.5;
    private const double Widest = 14.5;
    private const double Usual = 14.2;
    private const double Reach = 0.8;

    // The cell stands upright between them, so that it covers neither figures nor its neighbours, mm.
    private const double Floor = 0.6;
    private const double WallHeight = 6.0;
    private const double WallLength = 7.0;
    private const double Room = 15;
    private const int WallLines = 2;
    private const double Air = 1.2;

    // What a cell drops between and does not knock in, of what bays close by and gain, mm.
    private const double MostSqueeze = 0.1;
    private const double MostPlay = 0.6;

    /// <inheritdoc />
    public override string Name => "battery-bays";

    /// <inheritdoc />
    public override string Tells => "how much wider than a battery its bay is drawn";

    /// <inheritdoc />
    public override string? Matters(HousingPlan plan) => plan.Bay is not null ? "it holds a battery" : null;

    /// <inheritdoc />
    public override Coupon Draw(CouponWish wish)
    {
        PrintBasis basis = wish.Basis;
        ImmutableArray<double> steps = Steps(wish);
        double floor = basis.Up(Floor);
        double top = floor + basis.UpDistance(WallHeight);
        double wall = basis.Wall(WallLines);
        double figures = Figures.Height(basis);
        double widest = Base + steps[^1] + wall;
        var grid = new StepGrid(steps.Length, Columns, widest + Air, Room + figures + (2 * Air));
        var solids = new List<Solid> { Shapes.Extrude(grid.Plate, 0, floor) };
        var marks = new StepMarks(basis);

        // One cell is tried at a time, so neighbours share the wall between them.
        foreach (double[] row in steps.Chunk(Columns))
        {
            int first = steps.IndexOf(row[0]);
            double y = Lattice.Snap(grid.At(first).Y + ((figures + Air) / 2));
            double left = Lattice.Snap(-(row.Sum(step => Base + step + wall) + wall) / 2);
            solids.Add(Wall(left, y));
            foreach (double step in row)
            {
                double free = left + wall;
                left = Lattice.Snap(free + Base + step);
                solids.Add(Wall(left, y));
                var at = new Point2((free + left) / 2, y);
                marks.Add(step, Figures.Hundredths(step), at, at - new Point2(0, (Room + figures + Air) / 2), floor);
            }
        }

        Solid Wall(double from, double y) => Shapes.Extrude(
            Region.Rectangle(new Point2(from, y - (WallLength / 2)), new Point2(from + wall, y + (WallLength / 2))), 0, top);

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
                "Take an AA cell and measure its diameter with calipers, over the label. Stand it upright in each gap between two "
                    + "walls, from the largest figure down. Do not force it.",
            ],
            Cautions =
            [
                "Do not squeeze or scratch the cell, and keep its ends off metal.",
            ],
        };
    }

    /// <inheritdoc />
    public override ImmutableArray<Question> Questions(CouponWish wish) => [Diameter, .. Asked(wish).All];

    /// <inheritdoc />
    public override Reading Read(CouponWish wish, AnswerSheet answers)
    {
        FitAnswers asked = Asked(wish);
        FitJudgement judged = asked.Judge(answers);
        double over = Base - answers.Size(Diameter);
        return judged.Fault is { } fault ? Reading.Wrong(fault)
            : judged.Value is { } fits
                ? new Reading
                {
                    Values = [MeasuredValue.OfPairing("battery-fit", Math.Round(fits + over, 3), "added to a battery's bay")],
                }
            : asked.IsLooseWithoutAir(answers)
                ? new Reading
                {
                    Notes =
                    [
                        $"the cell knocks even between walls {Base:0.##} mm apart, the closest that there are: try it with a wider AA cell",
                    ],
                }
            : Reading.Farther(
                "battery-fit", judged.NextAround is { } next ? Math.Round(next + Base - Usual, 3) : null,
                $"the cell drops between no walls up to {Base + Steps(wish)[^1]:0.00} mm apart: measure it again, and try another AA cell");
    }

    /// <inheritdoc />
    public override IEnumerable<AnswerFault> Against(CouponWish wish, AnswerSheet answers, Reading own, MeasuredSoFar all)
    {
        if (own.Value("battery-fit") is { } bay && all.Of("slot-allowance") is { } slot)
        {
            double inHand = Math.Round(bay - slot, 3);
            if (inHand is < -MostSqueeze or > MostPlay)
            {
                yield return new AnswerFault("fits", all.Told(
                    "slot-allowance",
                    $"a bay drawn {bay:0.00} mm wider comes out {Math.Abs(inHand):0.00} mm {(inHand < 0 ? "narrower" : "wider")} than the "
                        + $"cell, since slots lose {slot:0.00} mm"));
            }
        }
    }

    private static SizeQuestion Diameter { get; } = new(
        "cell-diameter", "Diameter of the AA cell that you try, by calipers over its label, mm", Usual, Reach)
    {
        Beyond = $"no AA cell: they are {Thinnest:0.0} to {Widest:0.0} mm wide; measure again, or take an AA cell",
    };

    private static ImmutableArray<double> Steps(CouponWish wish) => wish.Around is { } around
        ? StepGrid.Around(around + Usual - Base, Step, Count)
        : StepGrid.Rising(First, Step, Count);

    private static FitAnswers Asked(CouponWish wish)
    {
        ImmutableArray<double> steps = Steps(wish);
        return new FitAnswers(
            new StepQuestion("tight", "The highest figure whose walls keep the cell from dropping to the plate by its own weight", steps),
            new StepQuestion("fits",
                "The figure that fits: the cell drops to the plate by itself, comes out again by two fingers, and does not knock when you "
                    + "tilt the plate to and fro", steps),
            new StepQuestion("loose", "The lowest figure at which the cell knocks from wall to wall when you tilt the plate", steps));
    }
}
