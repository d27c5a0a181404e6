using System.Collections.Immutable;
using ShellForge.Board.Profiles;
using ShellForge.Coupons.Answers;
using ShellForge.Coupons.Drawing;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Housing.Features;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Coupons.Kinds;

/// <summary>Openings in upright walls for the grip of a plug, each a little wider and higher than its profile says.</summary>
internal sealed class PlugOpenings : CouponKind
{
    private const int Count = 10;
    private const int Rows = 2;
    private const int Columns = Count / Rows;
    private const double Step = 0.05;
    private const double Floor = 0.6;
    private const int WallLines = 3;

    // Wall below, above and between openings, mm.
    private const double Below = 1.6;
    private const double Above = 1.2;
    private const double Between = 2;
    private const double Air = 1;

    // Between the two walls there is room for what a plug has in front of its grip, mm.
    private const double Inside = 12;

    // Openings for plugs and slots are drawn by one nozzle: they can't differ by more, mm.
    private const double MostApart = 0.3;

    /// <inheritdoc />
    public override string Name => "plug-openings";

    /// <inheritdoc />
    public override string Tells => "how much larger than its profile the opening for your plug is drawn";

    /// <inheritdoc />
    public override bool NeedsPlug => true;

    /// <inheritdoc />
    public override string? Lacks(CouponWish wish) =>
        wish.Plug?.Mouth is null ? "name the connector that your plug goes into, such as --plug usb-c-receptacle" : null;

    /// <inheritdoc />
    public override string? Matters(HousingPlan plan) =>
        plan.Ports.FirstOrDefault() is { } port ? $"a plug goes into {port.Ref}" : null;

    /// <inheritdoc />
    public override Coupon Draw(CouponWish wish)
    {
        PrintBasis basis = wish.Basis;
        MouthProfile mouth = wish.Plug!.Mouth!;
        ImmutableArray<double> steps = Steps(wish);
        double floor = basis.Up(Floor);
        double bottom = floor + basis.UpDistance(Below);
        double thick = basis.Wall(WallLines);
        double figures = Figures.Height(basis);
        double pitch = Math.Max(mouth.RecessWidth + steps[^1] + Between,
            steps.Max(step => Figures.Room(Figures.Gap(step), basis).Width) + Air);
        double half = (Columns * pitch) / 2;
        double top = basis.Up(bottom + mouth.RecessHeight + steps[^1] + Above);
        double outer = (Inside / 2) + thick;
        double edge = outer + figures + (2 * Air);
        var solids = new List<Solid>
        {
            Shapes.Extrude(Region.RoundedRectangle(Point2.Origin, (2 * half) + thick, 2 * edge, 2), 0, floor),
        };
        var marks = new StepMarks(basis);
        for (int row = 0; row < Rows; row++)
        {
            // The front wall holds the smaller ones; plugs come from outside.
            double inner = row == 0 ? -Inside / 2 : outer;
            Region wall = Region.Rectangle(new Point2(-half - (thick / 2), floor / 2), new Point2(half + (thick / 2), top));
            for (int column = 0; column < Columns; column++)
            {
                double step = steps[(row * Columns) + column];
                double x = Lattice.Snap((column + 0.5 - (Columns / 2.0)) * pitch);
                double height = basis.Up(bottom + mouth.RecessHeight + step) - bottom;
                wall = wall.Less(Opening(new Point2(x, bottom + (height / 2)), mouth, step, height, wish));
                string mark = Figures.Gap(step);
                double y = (outer + Air + (figures / 2)) * (row == 0 ? -1 : 1);
                marks.Add(step, mark, new Point2(x, (Inside + thick) / 2 * (row == 0 ? -1 : 1)), new Point2(x, y), floor);
            }

            // Drawn lying and set upright: what was up stays up, what was thickness reaches to the front.
            solids.Add(Shapes.Extrude(wall, 0, thick).Moved(
                Transform3.TurnX(Angle.FromDegrees(90)).Then(Transform3.Shift(0, inner, 0))));
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
                "Print it as it stands, without support. Unplug your cable at its other end first.",
                "Push the plug from outside into each opening, grip and all, from the largest figure down, as it goes into the housing.",
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
                ? new Reading { Values = [Value(fits)] }
            : asked.IsLooseWithoutAir(answers)
                ? new Reading
                {
                    Values = [Value(0)],
                    Notes =
                    [
                        $"your plug is smaller than {wish.Plug!.Name} says and goes through the opening as it is; "
                            + "'housing: {measured: {plug: ...}}' makes the opening closer",
                    ],
                }
            : Reading.Farther(
                "plug-allowance", judged.NextAround,
                $"your plug goes into no opening up to {Steps(wish)[^1]:0.00} mm larger than {wish.Plug!.Name} says: measure its grip, and "
                    + "write that into the board file, 'housing: {measured: {plug: ...}}'");
    }

    /// <inheritdoc />
    public override IEnumerable<AnswerFault> Against(CouponWish wish, AnswerSheet answers, Reading own, MeasuredSoFar all)
    {
        if (own.Value("plug-allowance") is { } plug && all.Of("slot-allowance") is { } slot && plug > Math.Max(0, slot) + MostApart)
        {
            yield return new AnswerFault("fits", all.Told("slot-allowance",
                $"openings can't lose {plug:0.00} mm where slots lose {slot:0.00} mm, unless the plug is larger than {wish.Plug!.Name} "
                    + "says (measure its grip)"));
        }
    }

    private static MeasuredValue Value(double fits) =>
        MeasuredValue.OfPairing("plug-allowance", fits, "added to openings for plugs");

    /// <summary>An opening as a housing has it: round below, slanted above where an arc would hang in the air.</summary>
    private static Region Opening(Point2 middle, MouthProfile mouth, double step, double height, CouponWish wish)
    {
        double width = mouth.RecessWidth + step;
        var roof = RoofSlant.For(wish.Printer.OverhangDegrees);
        return RoofedOpening.Of(middle, width, height, roof.PlugCorner((width, height), mouth, wish.Printer.BridgeNote), roof);
    }

    private static ImmutableArray<double> Steps(CouponWish wish) =>
        StepGrid.Around(wish.Around ?? 0, Step, Count);

    private static FitAnswers Asked(CouponWish wish)
    {
        ImmutableArray<double> steps = Steps(wish);
        return new FitAnswers(
            new StepQuestion("tight", "The highest figure whose opening the grip does not enter, or only by force", steps),
            new StepQuestion("fits",
                "The figure that fits: the grip goes in without force and without scraping, and wiggles by no more than a sheet of paper",
                steps),
            new StepQuestion("loose", "The lowest figure at which the grip wiggles so that you see it move", steps));
    }
}
