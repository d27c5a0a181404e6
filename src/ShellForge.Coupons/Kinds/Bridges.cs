using System.Collections.Immutable;
using ShellForge.Coupons.Answers;
using ShellForge.Coupons.Drawing;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Coupons.Kinds;

/// <summary>Decks from one long pier to posts farther and farther away: how far this printer bridges.</summary>
internal sealed class Bridges : CouponKind
{
    // Each span is a fifth to a third longer than the one before; scaled where a coupon before pointed elsewhere.
    private static readonly ImmutableArray<double> Usual = [6, 8, 10, 12, 15, 18, 22, 27, 33, 40];

    private const double UsualMiddle = 15;
    private const double DeckWidth = 4;
    private const double DeckHeight = 0.4;
    private const double Clear = 2.4;
    private const double Floor = 0.4;
    private const double Air = 1.2;
    private const double AroundFigures = 0.8;
    private const double StripWidth = 2.5;
    private const int PierLines = 4;

    /// <summary>Its name.</summary>
    public const string Word = "bridges";

    /// <inheritdoc />
    public override string Name => Word;

    /// <inheritdoc />
    public override string Tells => "how far your printer bridges through the air";

    /// <inheritdoc />
    public override string? Matters(HousingPlan plan) =>
        !plan.Openings.IsEmpty || plan.Mount is not null ? "roofs of openings or of the mount are bridged" : null;

    /// <inheritdoc />
    public override Coupon Draw(CouponWish wish)
    {
        PrintBasis basis = wish.Basis;
        ImmutableArray<double> spans = Steps(wish);
        double figures = Figures.Height(basis);
        double pitch = Math.Max(DeckWidth, figures) + Air;
        double sign = spans.Max(span => Figures.Room(Figures.Size(span), basis).Width) + (2 * AroundFigures);
        double floor = basis.Up(Floor);
        double under = floor + basis.UpDistance(Clear);
        double top = under + basis.UpDistance(DeckHeight);
        double pier = basis.Wall(PierLines);
        double left = -((2 * pier) + spans[^1] + sign) / 2;
        double half = spans.Length * pitch / 2;
        var solids = new List<Solid> { Shapes.Box(new Point3(left, -half, 0), new Point3(left + pier, half, top)) };
        var marks = new StepMarks(basis);
        for (int i = 0; i < spans.Length; i++)
        {
            double y = Lattice.Snap(half - ((i + 0.5) * pitch));
            double post = left + pier + spans[i];
            double end = post + pier + sign;
            void Box(double fromX, double toX, double width, double fromZ, double toZ) =>
                solids.Add(Shapes.Box(new Point3(fromX, y - (width / 2), fromZ), new Point3(toX, y + (width / 2), toZ)));

            // A strip on the bed joins post and pier; the figures stand on a foot behind the post.
            Box(left, end, StripWidth, 0, floor);
            Box(post, end, pitch, 0, floor);
            Box(post, post + pier, DeckWidth, 0, top);
            Box(left, post + pier, DeckWidth, under, top);
            string mark = Figures.Size(spans[i]);
            marks.Add(spans[i], mark, new Point2(left + pier + (spans[0] / 2), y), new Point2(post + pier + (sign / 2), y), floor);
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
                "Print it without support, with the fan as for the housing. Look at each deck from the side and from below, from the "
                    + "shortest up; do not pull threads off first.",
                "Lay a ruler on top, over each deck: what counts is whether its top is level and closed.",
            ],
        };
    }

    /// <inheritdoc />
    public override ImmutableArray<Question> Questions(CouponWish wish) => [Clean(wish), Level(wish), Closed(wish)];

    /// <inheritdoc />
    public override Reading Read(CouponWish wish, AnswerSheet answers)
    {
        ImmutableArray<double> spans = Steps(wish);
        int clean = answers.Step(Clean(wish));
        int level = answers.Step(Level(wish));
        int closed = answers.Step(Closed(wish));
        if (clean > level || level > closed)
        {
            (StepQuestion asked, string message) = clean > level
                ? (Level(wish), $"a deck of {Shown(spans, clean)} is clean, so it is level too: look at both again")
                : (Closed(wish), $"a deck of {Shown(spans, level)} is level, so it is closed too: look at both again");
            return Reading.Wrong(new AnswerFault(asked.Key, message));
        }

        return clean < 0
            ? new Reading { NextAround = spans[0] }
            : new Reading
            {
                Values =
                [
                    MeasuredValue.OfPairing("bridge-note", spans[clean], "longest bridge that is clean"),
                    MeasuredValue.OfPairing("bridge-warn", spans[level], "longest bridge that stays level"),
                    MeasuredValue.OfPairing("bridge-stop", spans[closed], "longest bridge that closes"),
                ],
                Notes = closed == spans.Length - 1 ? ["all decks are closed: the longest was not long enough to show the limit"] : [],
            };
    }

    private static string Shown(ImmutableArray<double> spans, int at) => Figures.Size(spans[at]);

    private static ImmutableArray<double> Steps(CouponWish wish) =>
    [
        .. Usual.Select(span => Math.Round(2 * span * (wish.Around ?? UsualMiddle) / UsualMiddle, MidpointRounding.AwayFromZero) / 2)
            .Distinct(),
    ];

    private static StepQuestion Clean(CouponWish wish) => new("clean",
        "The highest figure whose deck is clean below, like all shorter ones: no thread hangs off it", Steps(wish));

    private static StepQuestion Level(CouponWish wish) => new("level",
        "The highest figure whose deck is level on top, with or without threads: no light shows under the ruler", Steps(wish));

    private static StepQuestion Closed(CouponWish wish) => new("closed",
        "The highest figure whose deck is closed on top, even if it sags", Steps(wish));
}
