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

/// <summary>Windows of rising thickness that are held over one LED's cell: how much light the spool lets through.</summary>
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

    private static readonly ImmutableArray<double> Wanted = [0.4, 0.8, 1.2, 1.6, 2.0, 2.4];

    private static readonly ReadingQuestion Open = new(
        "open", "The meter's reading of one white LED through its black tube or cell, without the strip");

    /// <inheritdoc />
    public override string Name => "diffuser-steps";

    /// <inheritdoc />
    public override string Tells => "how much light your diffuser's spool lets through";

    /// <inheritdoc />
    public override string? Matters(HousingPlan plan) =>
        plan.Diffuser.Fit != DiffuserFit.CutSheet && plan.Diffuser.Filament.Name == plan.Source.Print.Shell.Name
            ? "its diffuser is printed" : null;

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
                "Put a black tube as wide as a window, 15 mm high, over one white LED at a steady brightness, in a dark room; a "
                    + "telephone's light meter or a lux meter lies on it. Read it without the strip.",
                "Lay each window between tube and meter, flat on the tube, and read again; the LED must stay as it is.",
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

    private static ImmutableArray<double> Steps(PrintBasis basis) => [.. Wanted.Select(basis.Up).Distinct()];

    private static ImmutableArray<ReadingQuestion> Windows(CouponWish wish) =>
    [
        .. Steps(wish.Basis).Select(step => new ReadingQuestion(
            $"window-{Figures.Size(step)}", $"The reading through the window marked {Figures.Size(step)}")),
    ];
}
