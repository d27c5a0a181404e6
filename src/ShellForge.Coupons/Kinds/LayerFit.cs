using System.Collections.Immutable;
using ShellForge.Coupons.Answers;
using ShellForge.Coupons.Drawing;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Coupons.Kinds;

/// <summary>
/// A flat bar that is pushed into tunnels of rising height: the gap across the layers, in whole layers, since nothing else prints.
/// </summary>
internal sealed class LayerFit : CouponKind
{
    private const double Reach = 0.6;

    // From where on farther steps begin at most, mm: roofs that hang down by more are no fit.
    private const double Farthest = 1;
    private const int LeastSteps = 4;
    private const double BarWidth = 6;
    private const double BarLength = 14;
    private const double BarHeight = 2;
    private const double Beside = 0.6;
    private const double Floor = 0.6;
    private const double Roof = 0.8;
    private const double AroundFigures = 1.0;
    private const int WallLines = 2;

    /// <inheritdoc />
    public override string Name => "layer-fit";

    /// <inheritdoc />
    public override string Tells => "the gap across layers at which a part slides under a roof";

    /// <inheritdoc />
    public override string? Matters(HousingPlan plan) =>
        plan.Closure is TwistClosurePlan ? "lugs turn under the tub's rim" : null;

    /// <inheritdoc />
    public override Coupon Draw(CouponWish wish)
    {
        PrintBasis basis = wish.Basis;
        ImmutableArray<double> steps = Steps(wish);
        double floor = basis.Up(Floor);
        double bar = basis.UpDistance(BarHeight);
        double top = floor + bar + basis.UpDistance(steps[^1]) + basis.UpDistance(Roof);
        double wall = basis.Wall(WallLines);
        double width = BarWidth + (2 * Beside);
        double depth = Figures.Height(basis) + (2 * AroundFigures);
        double pitch = Math.Max(width, steps.Max(step => Figures.Room(Figures.Gap(step), basis).Width) + AroundFigures) + wall;
        double half = ((steps.Length * pitch) + wall) / 2;
        var tunnels = new List<Solid>();
        var marks = new StepMarks(basis);
        for (int i = 0; i < steps.Length; i++)
        {
            Point2 at = Lattice.Snap(new Point2((i - ((steps.Length - 1) / 2.0)) * pitch, 0));
            tunnels.Add(Shapes.Box(new Point3(at.X - (width / 2), -depth, floor),
                new Point3(at.X + (width / 2), depth, floor + bar + steps[i])));
            string mark = Figures.Gap(steps[i]);
            marks.Add(steps[i], mark, at, at, top);
        }

        Solid block = Shapes.Box(new Point3(-half, -depth / 2, 0), new Point3(half, depth / 2, top));
        return new Coupon
        {
            Kind = this,
            Wish = wish,
            Pieces =
            [
                marks.Piece(Name + "-tunnels", block.Less(tunnels).And(marks.Solids)),
                new CouponPiece(Name + "-bar",
                    Shapes.Box(new Point3(-BarLength / 2, -BarWidth / 2, 0), new Point3(BarLength / 2, BarWidth / 2, bar)), [], []),
            ],
            Hands =
            [
                "Pull loose threads from the tunnels' roofs with tweezers. Clean the bar's edge that lay on the bed, and push it into each "
                    + "tunnel as it was printed, its lower face down, from the largest figure down. In the largest it must go in.",
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
                    // Between two steps nothing prints: the looser one.
                    Values =
                    [
                        MeasuredValue.OfPairing("layer-fit", wish.Basis.UpDistance(fits), "gap across layers"),
                    ],
                }
            : answers.Step(asked.Loose) != 0 ? Sagging(wish, judged)
            : Steps(wish)[0] is var least && least > 1.5 * wish.Printer.LayerHeight
                ? new Reading { NextAround = judged.NextAround }
            : new Reading
            {
                // Nothing closer than a layer prints.
                Values = [MeasuredValue.OfPairing("layer-fit", least, "gap across layers")],
                Notes = [$"the bar has play under a roof one layer above it; nothing closer than {least:0.0#} mm prints"],
            };
    }

    // Roofs that hang down a layer or two leave room under higher ones; farther down it is the bridging that is out of order.
    private static Reading Sagging(CouponWish wish, FitJudgement judged) => new()
    {
        NextAround = wish.Around is null ? judged.NextAround : null,
        NextKind = wish.Around is null ? null : Bridges.Word,
        Notes = ["the bar goes into no tunnel, their roofs hang down: cool more, print slower, then go on"],
    };

    private static ImmutableArray<double> Steps(CouponWish wish)
    {
        double layer = wish.Printer.LayerHeight;
        int count = Math.Max(LeastSteps, (int)Math.Ceiling(Math.Round(Reach / layer, 4)));
        double from = Math.Round(((wish.Around ?? 0) - (count * layer / 2)) / layer) * layer;
        return StepGrid.Rising(Math.Clamp(from, layer, Farthest), layer, count);
    }

    private static FitAnswers Asked(CouponWish wish)
    {
        ImmutableArray<double> steps = Steps(wish);
        return new FitAnswers(
            new StepQuestion("tight", "The highest figure whose tunnel the bar does not go through when you push with one thumb", steps),
            new StepQuestion("fits",
                "The figure that fits: the bar slides through under light pressure of one finger, and does not tip in the tunnel", steps),
            new StepQuestion("loose", "The lowest figure at which the bar slides out by its own weight and tips up and down", steps));
    }
}
