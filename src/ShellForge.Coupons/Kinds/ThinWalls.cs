using System.Collections.Immutable;
using ShellForge.Coupons.Answers;
using ShellForge.Coupons.Drawing;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Coupons.Kinds;

/// <summary>Upright walls of rising thickness, from half a line on, and one of four lines for calipers.</summary>
internal sealed class ThinWalls : CouponKind
{
    private const int Count = 9;
    private const int Columns = 5;

    // The thinnest wall as a share of a line, and the steps as a share of it, rounded to what figures say.
    private const double From = 0.5;
    private const double StepShare = 0.15;
    private const double Fineness = 0.05;
    private const double WallLength = 9;
    private const double WallHeight = 4;
    private const double Floor = 0.8;
    private const double Air = 1.5;
    private const int CaliperLines = 4;
    private const string CaliperMark = "L4";

    // Calipers and prints stray by 0.03 each; flow that is off by more shows on outer sizes and on thin walls alike, mm.
    private const double MostStray = 0.2;

    /// <inheritdoc />
    public override string Name => "thin-walls";

    /// <inheritdoc />
    public override string Tells => "the thinnest wall or line that prints whole";

    /// <inheritdoc />
    public override string? Matters(HousingPlan plan) =>
        plan.Baffle is not null || plan.Lettering.Length > 0 ? "it has fine walls or letters" : null;

    /// <inheritdoc />
    public override Coupon Draw(CouponWish wish)
    {
        PrintBasis basis = wish.Basis;
        ImmutableArray<double> steps = Steps(wish);
        double floor = basis.Up(Floor);
        double top = floor + basis.UpDistance(WallHeight);
        double figures = Figures.Height(basis);
        double pitchX = Math.Max(WallLength, steps.Max(step => Figures.Room(Figures.Gap(step), basis).Width)) + Air;
        double pitchY = figures + steps[^1] + basis.Wall(CaliperLines) + (2 * Air);
        var grid = new StepGrid(Count + 1, Columns, pitchX, pitchY);
        var solids = new List<Solid> { Shapes.Extrude(grid.Plate, 0, floor) };
        var marks = new StepMarks(basis);
        void Wall(int cell, double thickness, string mark)
        {
            Point2 at = Lattice.Snap(grid.At(cell) + new Point2(0, (figures + Air) / 2));
            var half = new Point2(WallLength / 2, thickness / 2);
            solids.Add(Shapes.Extrude(Region.Rectangle(at - half, at + half), 0, top));
            marks.Add(thickness, mark, at, at - new Point2(0, (thickness / 2) + Air + (figures / 2)), floor);
        }

        for (int i = 0; i < steps.Length; i++)
        {
            Wall(i, steps[i], Figures.Gap(steps[i]));
        }

        Wall(Count, basis.Wall(CaliperLines), CaliperMark);
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
                "Print it with the housing's own setting for thin walls. Hold it against the light, and lean a fingernail against each "
                    + "wall, from the highest figure down. Walls that your slicer leaves out count as missing.",
                $"Measure the wall marked {CaliperMark} in the middle of its height, three times.",
            ],
        };
    }

    /// <inheritdoc />
    public override ImmutableArray<Question> Questions(CouponWish wish) => [Broken(wish), Whole(wish), FourLines(wish)];

    /// <inheritdoc />
    public override Reading Read(CouponWish wish, AnswerSheet answers)
    {
        ImmutableArray<double> steps = Steps(wish);
        int broken = answers.Step(Broken(wish));
        int whole = answers.Step(Whole(wish));
        double off = Grows(wish, answers);
        if (whole >= 0 && broken >= whole)
        {
            return Reading.Wrong(new AnswerFault("whole",
                $"a wall of {steps[whole]:0.00} can't be whole while one of {steps[broken]:0.00} is broken: look at both again"));
        }

        if (whole < 0)
        {
            return broken == steps.Length - 1
                ? new Reading { NextAround = Math.Round(steps[^1] + ((steps[^1] - steps[0]) / 2), 2) }
                : Reading.Wrong(new AnswerFault("whole",
                    broken < 0 ? "none is whole and none is broken: look again, each is one or the other"
                        : $"none is whole, though none above {steps[broken]:0.00} is broken: look at those again"));
        }

        return broken < whole - 1
            ? Reading.Wrong(new AnswerFault("whole",
                $"walls from {steps[broken + 1]:0.00} to {steps[whole - 1]:0.00} are left that are neither whole nor broken: say which"))
            : new Reading
            {
                Values = [MeasuredValue.OfPairing("thinnest-wall", steps[whole], "thinnest wall")],
                Notes = Math.Abs(off) > MostStray
                    ? [$"four lines come out {Math.Abs(off):0.00} mm {(off > 0 ? "thicker" : "thinner")} than drawn: check the flow first"]
                    : [],
            };
    }

    /// <inheritdoc />
    public override IEnumerable<AnswerFault> Against(CouponWish wish, AnswerSheet answers, Reading own, MeasuredSoFar all)
    {
        if (all.Of("outer-allowance") is { } outer)
        {
            double grows = Grows(wish, answers);
            if (Math.Abs(grows + outer) > MostStray)
            {
                yield return new AnswerFault("four-lines", all.Told(
                    "outer-allowance",
                    $"four lines come out {grows:+0.00;-0.00;0.00} mm, outer sizes {-outer:+0.00;-0.00;0.00} mm: one nozzle "
                        + "can't do both"));
            }
        }
    }

    private static double Grows(CouponWish wish, AnswerSheet answers)
    {
        SizeQuestion four = FourLines(wish);
        return answers.Size(four) - four.Drawn;
    }

    private static ImmutableArray<double> Steps(CouponWish wish)
    {
        double line = wish.Printer.LineWidth;
        double step = Math.Max(Fineness, Math.Round(StepShare * line / Fineness) * Fineness);
        double wanted = wish.Around is { } around ? around - (step * Count / 2) : From * line;
        double from = Math.Ceiling(Math.Round(wanted / Fineness, 4)) * Fineness;
        return StepGrid.Rising(Math.Max(Fineness, from), step, Count);
    }

    private static StepQuestion Broken(CouponWish wish) => new("broken",
        "The highest figure whose wall is missing, has holes, or comes off under a fingernail", Steps(wish));

    private static StepQuestion Whole(CouponWish wish) => new("whole",
        "The lowest figure whose wall stands whole from end to end, lets no light through gaps, and springs back from a fingernail",
        Steps(wish));

    private static SizeQuestion FourLines(CouponWish wish) => new("four-lines", $"Thickness of the wall marked {CaliperMark}, mm",
        wish.Basis.Wall(CaliperLines), 0.5);
}
