using System.Collections.Immutable;
using ShellForge.Board.Profiles;
using ShellForge.Coupons.Answers;
using ShellForge.Coupons.Drawing;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Housing.Features;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;
using ShellForge.Planning.Posts;

namespace ShellForge.Coupons.Kinds;

/// <summary>Bosses with holes round the profile's value for the insert in the drawer, each as a housing has it.</summary>
internal sealed class InsertHoles : CouponKind
{
    private const int Count = 8;
    private const int Columns = 4;
    private const double Step = 0.05;

    // The steps reach farther up than down: holes come out too small more often than too large, mm.
    private const double Below = 0.1;

    // Air between neighbours in the row, and round the figures, mm.
    private const double Air = 1.5;

    // Six layers under the hole, as in a housing, mm.
    private const double UnderHole = 1.2;

    /// <inheritdoc />
    public override string Name => "insert-holes";

    /// <inheritdoc />
    public override string Tells => "the hole that your insert goes into well";

    /// <inheritdoc />
    public override bool NeedsInsert => true;

    /// <inheritdoc />
    public override string? Lacks(CouponWish wish) =>
        wish.Insert is null ? "name the insert in your drawer by its body, such as --insert m2.5x4-od4.6" : null;

    /// <inheritdoc />
    public override string? Matters(HousingPlan plan) =>
        plan.Bosses.Any(boss => boss.Hole is not null) ? "its screws go into inserts" : null;

    /// <inheritdoc />
    public override Coupon Draw(CouponWish wish)
    {
        InsertProfile insert = wish.Insert!;
        PrintBasis basis = wish.Basis;
        ImmutableArray<double> steps = Steps(wish);
        double usual = InsertHoleDecision.Diameter(insert);
        double wall = InsertHoleDecision.BossDiameter(insert, basis) - usual;
        double plate = basis.Up(UnderHole);
        double depth = InsertHoleDecision.Depth(insert, basis);
        double top = plate + depth;
        double figures = Figures.Height(basis);
        double widest = steps[^1] + wall;
        double pitchX = Math.Max(widest, steps.Max(step => Figures.Room(Figures.Hundredths(step), basis).Width)) + Air;
        var grid = new StepGrid(Count, Columns, pitchX, widest + figures + (2 * Air));
        var solids = new List<Solid> { Shapes.Extrude(grid.Plate, 0, plate) };
        var holes = new List<Solid>();
        var marks = new StepMarks(basis);
        for (int i = 0; i < steps.Length; i++)
        {
            Point2 at = Lattice.Snap(grid.At(i) + new Point2(0, (figures + Air) / 2));
            solids.Add(Shapes.Extrude(Region.Disc(at, Ring.Peg((steps[i] + wall) / 2)), 0, top));
            InsertHolePlan hole = InsertHoleDecision.Plan(insert with { HoleDiameter = new Sourced(steps[i], Name), IsHoleMeasured = true },
                top, depth);
            holes.Add(InsertHoleSolid.Of(at, top, hole));
            marks.Add(steps[i], Figures.Hundredths(steps[i]), at, at - new Point2(0, (widest + Air + figures) / 2), plate);
        }

        return new Coupon
        {
            Kind = this,
            Wish = wish,
            Pieces = [marks.Piece(wish.NameOf(this), Solid.Union([.. solids, .. marks.Solids]).Less(holes))],
            Hands =
            [
                $"Set one insert {insert.Name} into each hole, from the smallest figure up: iron at {wish.Filament.IronCelsius.Value:0} "
                    + $"degrees, its own weight only, straight.",
                "Press each flush with a cold flat piece of metal, and let it cool for a minute.",
                "Screw a screw in by hand, then lean it gently to each side and try to turn the insert with it.",
            ],
            Cautions =
                ["The iron and the insert are hot enough to burn skin, and hot plastic gives off fumes: ventilate, and hold the print "
                    + "with pliers."],
        };
    }

    /// <inheritdoc />
    public override ImmutableArray<Question> Questions(CouponWish wish) => Asked(wish).All;

    /// <inheritdoc />
    public override Reading Read(CouponWish wish, AnswerSheet answers)
    {
        InsertProfile insert = wish.Insert!;
        FitJudgement judged = Asked(wish).Judge(answers);
        return judged.Fault is { } fault ? Reading.Wrong(fault)
            : judged.Value is not { } hole ? Farther(insert, judged.NextAround!.Value)
            : hole > insert.OuterDiameter
                ? Reading.Wrong(
                    new AnswerFault("fits",
                        $"a hole of {hole:0.00} is wider than the insert's body of {insert.OuterDiameter.Value:0.00}: measure the insert "
                            + $"over its knurl"))
            : new Reading
            {
                Values = [MeasuredValue.OfInsert(insert.Name, hole)],
            };
    }

    /// <inheritdoc />
    public override IEnumerable<AnswerFault> Against(CouponWish wish, AnswerSheet answers, Reading own, MeasuredSoFar all)
    {
        if (own.Value("insert-holes") is { } drawn && all.Of("hole-allowance") is { } lost)
        {
            double inHand = Math.Round(drawn - lost, 3);
            double chart = Math.Round(wish.Insert!.HoleDiameter - wish.Printer.HoleAllowance, 3);
            if (Math.Abs(inHand - chart) > MostApart)
            {
                yield return new AnswerFault("fits", all.Told("hole-allowance",
                    $"a hole drawn {drawn:0.00} mm wide comes out {inHand:0.00} mm by the bar; such an insert holds in {chart:0.00} mm"));
            }
        }
    }

    // The chart's hole, as it comes out of a typical printer, is off by no more than this, mm: inserts and filaments differ by that.
    private const double MostApart = 0.25;

    // Nothing is held by a hole as wide as the body, and what drops into one so much narrower is another insert. Share of the body.
    private const double Narrowest = 0.8;

    private static Reading Farther(InsertProfile insert, double around) => around - Below > insert.OuterDiameter
        ? new Reading
        {
            Notes =
            [
                $"{insert.Name} sinks into no hole, though they are drawn as wide as its body of {insert.OuterDiameter.Value:0.00} mm: "
                    + "measure it over its knurl, and see that the iron is as hot as the sheet says",
            ],
        }
        : around < Narrowest * insert.OuterDiameter
        ? new Reading
        {
            Notes =
            [
                $"the insert drops into every hole, though {insert.Name} has a body of {insert.OuterDiameter.Value:0.00} mm: measure it "
                    + "over its knurl, and take the profile that says so",
            ],
        }
        : new Reading { NextAround = around };

    private static ImmutableArray<double> Steps(CouponWish wish) =>
        StepGrid.Rising(Math.Round((wish.Around ?? InsertHoleDecision.Diameter(wish.Insert!)) - Below, 2), Step, Count);

    private static FitAnswers Asked(CouponWish wish)
    {
        ImmutableArray<double> steps = Steps(wish);
        return new FitAnswers(
            new StepQuestion("tight",
                "The highest figure at which the iron's weight alone does not sink the insert within ten seconds, or the boss bulges or "
                    + "cracks", steps),
            new StepQuestion("fits",
                "The figure that fits: the iron's weight sinks the insert in three to ten seconds, it stays straight, and a screw "
                    + "tightened with two fingers does not turn it", steps),
            new StepQuestion("loose", "The lowest figure at which the insert drops in almost by itself, tilts, or turns with the screw",
                steps));
    }
}
