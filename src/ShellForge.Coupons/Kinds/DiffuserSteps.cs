using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Profiles;
using ShellForge.Coupons.Answers;
using ShellForge.Coupons.Drawing;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Coupons.Kinds;

/// <summary>
/// Windows of rising thickness that are held over one LED's cell: how much light the spool lets through. It takes a meter: thick windows of
/// a dense and of a clear spool look alike beside each other (from 0.4 to 2.4 mm the light falls to 25 % where t0 is 0.25 mm, to 21 % where
/// it is half of that), so that eyes which compare windows can't tell one from the other.
/// </summary>
internal sealed class DiffuserSteps : CouponKind
{
    private const double WindowWidth = 14;
    private const double WindowDepth = 12;
    private const double Rib = 3;

    // Not as thick as any window, so that each shows its edge.
    private const double Frame = 1.0;

    // Thicker material never lets more through; meters and hands stray by this share.
    private const double Stray = 0.05;

    // A reading farther off the law of the others than this share was misread.
    private const double MostStray = 0.3;

    // A bare LED's reading may lie off what the windows among themselves point to by this share, and by so many times what readings that
    // stray by a fortieth leave open.
    private const double OpenStray = 0.2;
    private const double Fortieth = 0.025;
    private const double Spreads = 3;

    private static readonly ImmutableArray<double> Wanted = [0.4, 0.8, 1.2, 1.6, 2.0, 2.4];

    private static readonly ReadingQuestion Open = new(
        "open", "The meter's reading of one white LED through its black tube or cell, without the strip");

    /// <inheritdoc />
    public override string Name => "diffuser-steps";

    /// <inheritdoc />
    public override string Tells => "how much light your diffuser's spool lets through";

    /// <inheritdoc />
    public override string? Matters(HousingPlan plan) =>
        plan.Diffuser.Fit != DiffuserFit.CutSheet ? $"its diffuser is printed of {plan.Diffuser.Filament.Name}" : null;

    /// <inheritdoc />
    public override FilamentProfile FilamentOf(HousingPlan plan) => plan.Diffuser.Filament;

    /// <inheritdoc />
    public override Coupon Draw(CouponWish wish)
    {
        PrintBasis basis = wish.Basis;
        ImmutableArray<double> steps = Steps(basis);
        double frame = basis.Up(Frame);
        double figures = Figures.Height(basis);
        double pitch = WindowWidth + Rib;
        double width = (steps.Length * pitch) + Rib;
        double border = figures + Rib;
        double depth = WindowDepth + Rib + border;
        var solids = new List<Solid>();
        Region plate = Region.RoundedRectangle(Point2.Origin, width, depth, 2);
        var marks = new StepMarks(basis);
        for (int i = 0; i < steps.Length; i++)
        {
            Point2 at = Lattice.Snap(new Point2((i - ((steps.Length - 1) / 2.0)) * pitch, (depth / 2) - Rib - (WindowDepth / 2)));
            var half = new Point2(WindowWidth / 2, WindowDepth / 2);
            Region window = Region.Rectangle(at - half, at + half);
            plate = plate.Less(window);
            solids.Add(Shapes.Extrude(window, 0, steps[i]));
            string mark = Figures.Size(steps[i]);
            marks.Add(steps[i], mark, at, at - new Point2(0, (WindowDepth + border) / 2), frame);
        }

        return new Coupon
        {
            Kind = this,
            Wish = wish,
            Pieces =
            [
                marks.Piece(Name, Solid.Union([Shapes.Extrude(plate, 0, frame), .. solids, .. marks.Solids])),
            ],
            Hands =
            [
                "Print it of the diffuser's filament, solid (100 % infill), face down as it lies.",
                "Put a black tube as wide as a window, 15 mm high, over one white LED at a steady brightness, in a dark room. A lux meter "
                    + "lies on it, or a telephone that shows lux: most see light from the side too weakly, so stick a square of white "
                    + "paper, 5 mm wide, over its sensor, and leave it there for all readings.",
                "Read it without the strip. Then lay each window between tube and meter, flat on the tube, and read again; the LED must "
                    + "stay as it is.",
            ],
            Cautions = ["Do not look into the LED; a quarter of its brightness is plenty."],
        };
    }

    /// <inheritdoc />
    public override ImmutableArray<Question> Questions(CouponWish wish) => [Open, .. Windows(wish)];

    /// <inheritdoc />
    public override Reading Read(CouponWish wish, AnswerSheet answers)
    {
        ImmutableArray<double> steps = Steps(wish.Basis);
        ImmutableArray<ReadingQuestion> windows = Windows(wish);
        double open = answers.Light(Open);
        double[] through = [.. windows.Select(window => answers.Light(window) / open)];
        for (int i = 0; i < through.Length; i++)
        {
            double before = i == 0 ? 1 : through[i - 1];
            if (through[i] > before * (1 + Stray))
            {
                return Reading.Wrong(new AnswerFault(windows[i].Key, string.Create(
                    CultureInfo.InvariantCulture,
                    $"{steps[i]:0.0} mm lets more light through than {(i == 0 ? "no window at all" : $"{steps[i - 1]:0.0} mm")}: the LED "
                        + $"changed, or two windows were mixed up; read both again")));
            }
        }

        // Both laws are straight lines through the origin: 1/T - 1 = t / t0 where it scatters, -ln T = t / t0 where it absorbs. Weights
        // make equal shares of error in T count equally.
        bool absorbs = wish.Filament.Absorbs;
        double[] lines = [.. through.Select(t => absorbs ? -Math.Log(Math.Min(1, t)) : (1 / Math.Min(1, t)) - 1)];
        double[] weights = [.. lines.Select(line => absorbs ? 1 : 1 / ((1 + line) * (1 + line)))];
        double slope = Enumerable.Range(0, steps.Length).Sum(i => weights[i] * steps[i] * lines[i])
            / Enumerable.Range(0, steps.Length).Sum(i => weights[i] * steps[i] * steps[i]);
        if (!(slope > 0))
        {
            return Reading.Wrong(
                new AnswerFault(windows[^1].Key, "no window dims the light: the readings were not taken through the strip"));
        }

        for (int i = 0; i < steps.Length; i++)
        {
            double expected = absorbs ? Math.Exp(-slope * steps[i]) : 1 / (1 + (slope * steps[i]));
            if (Math.Abs((through[i] / expected) - 1) > MostStray)
            {
                return Reading.Wrong(new AnswerFault(windows[i].Key, string.Create(
                    CultureInfo.InvariantCulture,
                    $"{steps[i]:0.0} mm lets {100 * through[i]:0.#} % through where the others say {100 * expected:0.#} %: read it "
                        + $"again")));
            }
        }

        if (OpenFault(absorbs, steps, through, open) is { } unlike)
        {
            return Reading.Wrong(unlike);
        }

        return new Reading
        {
            Values =
            [
                new MeasuredValue(MeasuredShelf.Filament, "transmission-length", Math.Round(1 / slope, 3), "transmission length")
                {
                    Range = FilamentProfile.TransmissionRange,
                },
            ],
        };
    }

    // The line through the windows alone, not held to begin at the bare LED: where it does not begin there, the meter sees the LED and a
    // window that glows to all sides unlike, and all shares are off by one factor.
    private static AnswerFault? OpenFault(bool absorbs, ImmutableArray<double> steps, double[] through, double open)
    {
        double[] lines = [.. through.Select(t => absorbs ? -Math.Log(t) : 1 / t)];
        double[] weights = [.. lines.Select(line => 1 / Math.Pow(Fortieth * (absorbs ? 1 : line), 2))];
        double Sum(Func<int, double> of) => Enumerable.Range(0, steps.Length).Sum(i => weights[i] * of(i));
        double all = Sum(_ => 1);
        double first = Sum(i => steps[i]);
        double second = Sum(i => steps[i] * steps[i]);
        double determinant = (all * second) - (first * first);
        double start = ((second * Sum(i => lines[i])) - (first * Sum(i => steps[i] * lines[i]))) / determinant;
        double spread = Math.Sqrt(second / determinant);
        double off = absorbs ? start : start - 1;
        if (Math.Abs(off) <= Math.Max(OpenStray, Spreads * spread))
        {
            return null;
        }

        double among = open / (absorbs ? Math.Exp(start) : Math.Max(start, OpenStray));
        return new AnswerFault(Open.Key, string.Create(
            CultureInfo.InvariantCulture,
            $"{open:0.#} without the strip, where the windows point to {among:0.#}: stick white paper, 5 mm wide, over the meter's sensor "
                + $"and read all again"));
    }

    private static ImmutableArray<double> Steps(PrintBasis basis) => [.. Wanted.Select(basis.Up).Distinct()];

    private static ImmutableArray<ReadingQuestion> Windows(CouponWish wish) =>
    [
        .. Steps(wish.Basis).Select(step => new ReadingQuestion(
            $"window-{Figures.Size(step)}", $"The reading through the window marked {Figures.Size(step)}")),
    ];
}
