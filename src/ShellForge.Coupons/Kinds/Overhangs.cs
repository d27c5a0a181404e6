using System.Collections.Immutable;
using ShellForge.Coupons.Answers;
using ShellForge.Coupons.Drawing;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Coupons.Kinds;

/// <summary>Walls that lean farther and farther out: how flat an overhang this printer lays without support.</summary>
internal sealed class Overhangs : CouponKind
{
    private const int Count = 10;
    private const int Columns = 5;
    private const double Step = 5;

    // The steepest lean that is tried, from the vertical, and how far an earlier coupon may shift it, degrees.
    private const double From = 30;
    private const double LeastFrom = 10;
    private const double MostFrom = 35;
    private const double Middle = From + (Step * (Count - 1) / 2);
    private const double Length = 8;
    private const double Thickness = 2.4;
    private const double Tallest = 6;
    private const double Farthest = 8;
    private const double Floor = 0.6;
    private const double Air = 1.5;

    /// <inheritdoc />
    public override string Name => "overhangs";

    /// <inheritdoc />
    public override string Tells => "how far a face may lean without support";

    /// <inheritdoc />
    public override string? Matters(HousingPlan plan) =>
        !plan.Openings.IsEmpty || plan.Closure is SnapClosurePlan or TwistClosurePlan
            ? "a bead, a lug or the roof of an opening leans out" : null;

    /// <inheritdoc />
    public override Coupon Draw(CouponWish wish)
    {
        PrintBasis basis = wish.Basis;
        ImmutableArray<double> steps = Steps(wish);
        double floor = basis.Up(Floor);
        double figures = Figures.Height(basis);
        double pitchX = Math.Max(Length, steps.Max(step => Figures.Room(Figures.Size(step), basis).Width)) + Air;
        double pitchY = figures + Thickness + Farthest + (2 * Air);
        var grid = new StepGrid(Count, Columns, pitchX, pitchY);
        var solids = new List<Solid> { Shapes.Extrude(grid.Plate, 0, floor) };
        var marks = new StepMarks(basis);
        for (int i = 0; i < Count; i++)
        {
            var lean = Angle.FromDegrees(steps[i]);
            double rise = basis.UpDistance(Math.Min(Tallest, Farthest * lean.Cos / lean.Sin));
            double reach = rise * lean.Sin / lean.Cos;
            Point2 foot = Lattice.Snap(grid.At(i) + new Point2(0, (-pitchY / 2) + Air + figures + (Air / 2)));
            ImmutableArray<Point2> Foot(double shift) =>
            [
                foot + new Point2(-Length / 2, shift), foot + new Point2(Length / 2, shift),
                foot + new Point2(Length / 2, Thickness + shift), foot + new Point2(-Length / 2, Thickness + shift),
            ];
            solids.Add(Solid.Union(
                Shapes.Extrude(Region.Polygon(Foot(0)), 0, floor), Shapes.Loft(Foot(0), floor, Foot(reach), floor + rise)));
            string mark = Figures.Size(steps[i]);
            marks.Add(steps[i], mark, foot + new Point2(0, Thickness / 2), foot - new Point2(0, (Air / 2) + (figures / 2)), floor);
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
                "Print it without support, with the fan as for the housing. The figures are degrees from the vertical.",
                "Look at the faces that lean over, from below and against the light, from the smallest figure up, and draw a fingernail "
                    + "along them.",
            ],
        };
    }

    /// <inheritdoc />
    public override ImmutableArray<Question> Questions(CouponWish wish) => [Clean(wish), Droops(wish)];

    /// <inheritdoc />
    public override Reading Read(CouponWish wish, AnswerSheet answers)
    {
        ImmutableArray<double> steps = Steps(wish);
        int clean = answers.Step(Clean(wish));
        int droops = answers.Step(Droops(wish));
        if (droops >= 0 && clean >= droops)
        {
            return Reading.Wrong(new AnswerFault("droops",
                $"a lean of {Figures.Size(steps[clean])} degrees can't be smooth while one of {Figures.Size(steps[droops])} droops: look "
                    + "at both again"));
        }

        return clean >= 0
            ? new Reading
            {
                Values =
                [
                    MeasuredValue.OfPairing("overhang", steps[clean], "overhang that prints smooth"),
                ],
                Notes = clean == Count - 1 ? ["all faces are smooth: the flattest was not flat enough to show the limit"] : [],
            }
            : steps[0] <= LeastFrom
                ? Reading.Wrong(
                    new AnswerFault("clean", "no face is smooth, not even the steepest: cool more, print slower and try again"))
            : new Reading { NextAround = Math.Max(LeastFrom, steps[0] - (Step * (Count - 1))) + (Middle - From) };
    }

    private static ImmutableArray<double> Steps(CouponWish wish) =>
        StepGrid.Rising(Math.Clamp(Math.Round((wish.Around ?? Middle) - (Middle - From)), LeastFrom, MostFrom), Step, Count);

    private static StepQuestion Clean(CouponWish wish) => new("clean",
        "The highest figure whose lower face is smooth, like all smaller ones: no line hangs, no corner curls up", Steps(wish));

    private static StepQuestion Droops(CouponWish wish) => new("droops",
        "The lowest figure whose lower face has hanging lines, or whose edge curls or breaks away", Steps(wish));
}
