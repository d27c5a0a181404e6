using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Exits;
using ShellForge.Planning.Plan;
using ShellForge.Planning.Posts;

namespace ShellForge.Planning.Closures;

/// <summary>
/// A twist lock: lugs on the lip enter slots in the tub's wall from above and turn clockwise under its rim,
/// <code>
///   rim ──┐  ┌───────────
///         │  │  /‾‾‾‾‾‾‾   45 degree ceiling, so that it prints
///         │  └──────────┐
///         └─────────────┘ stop
/// </code>
/// One lug stands out of the even spacing: the cover goes in one way only.
/// </summary>
internal sealed class TwistForm : ClosureForm
{
    // How far a lug reaches under the rim, radially, mm.
    private const double Hold = 0.6;

    // Room beside a lug along the wall and before its outer face, mm.
    private const double Gap = 0.2;

    // Height of a lug's outer face, mm, and of the rim over the slot's mouth.
    private const double LugFace = 1.0;
    private const double RimOver = 0.8;

    // Lug along the wall, mm, and as a share of the spacing.
    private const double LugLength = 10;
    private const double LugShare = 0.25;

    // One lug for so many mm of diameter.
    private const double DiameterPerLug = 30;

    // How far the odd lug stands out of the spacing, as a share of it: less, and it would enter by force.
    private const double OddShare = 0.12;

    // Lines of plastic outside a slot.
    private const int SkinLines = 2;

    // The ridge that a lug rides over: how far it reaches past the lug's gap, and along the wall, mm. Typical: felt as a click, and a
    // wall of four lines gives that much.
    private const double RidgePress = 0.15;
    private const double RidgeLength = 1.0;

    // Wall that stays between a slot and the opening of a port, mm.
    private const double BesidePort = 1.5;

    // Turns of the whole ring of lugs that are tried, in degrees.
    private const int StepDegrees = 2;

    /// <inheritdoc />
    public override ClosureKind Kind => ClosureKind.Twist;

    /// <inheritdoc />
    public override string Word => "twist";

    /// <inheritdoc />
    public override bool Reopens => true;

    /// <inheritdoc />
    public override bool TurnsCover => true;

    /// <inheritdoc />
    public override string? NoPryNotches => "a twist lock opens by hand";

    /// <inheritdoc />
    public override bool PostsInBore(CircuitBoard board) => false;

    /// <inheritdoc />
    public override Decided<ImmutableArray<ClosureSite>> Sites(
        Given given, ShellPlan bare, ImmutableArray<Joint> joints, LipRing lip) =>
            new Reasons().Of(ImmutableArray<ClosureSite>.Empty);

    /// <inheritdoc />
    public override ClosureObstacle? Obstacle(
        Given given, ShellPlan shell, LipRing lip, ImmutableArray<OpeningInPlan> openings)
    {
        (BoardFile file, PrintBasis basis) = given;
        string[] ports = [.. openings.Where(opening => opening.InWall is { HasTongue: true }).Select(opening => opening.Ref)];
        string[] exits = [.. ExitForm.Of(file).Where(exit => exit.HasTongue).Select(_ => "the cable's exit").Distinct()];
        string[] tongues = [.. ports, .. exits];
        return shell.Round is null ? Because("the outline is not round", null)
            : tongues.Length > 0 ? Because(
                $"the cover's tongue in the opening for {string.Join(" and ", tongues)} can't turn",
                ports.Length == 0 ? "lead the cable 'through: floor'" : "a connector whose body ends inside the board's edge")
            : shell.Wall - Hold - Gap < basis.Wall(SkinLines) - Layers.Slack ? Because(
                $"a wall of {Reasons.Mm(shell.Wall)} mm leaves no two lines outside the slots",
                $"'walls: {Enumerable.Range(SkinLines, 10).First(lines => basis.Wall(lines) >= basis.Wall(SkinLines) + Hold + Gap)}'")
            : LugRing.Of(file, shell, openings) is null ? Because(
                "openings for connectors leave no stretch of wall for the lugs", "close a port ('port: closed')")
            : null;
    }

    /// <inheritdoc />
    public override (double Length, string Why) LipOverlap(BoardFile file, LipRing lip) =>
        (RimOver + LugRise(lip.Gap) + LugFace + (2 * file.Print.Printer.LayerFit), "room for the lugs under the tub's rim");

    /// <inheritdoc />
    public override double CoverWallLeast(BoardFile file, double toHold) => toHold;

    /// <inheritdoc />
    public override Angle? KeyAt(HousingDraft draft) => RingOf(draft).Mouth(LugRing.Odd);

    /// <inheritdoc />
    public override Decided<ClosurePlan> Plan(HousingDraft draft, RimSectors rim, KeyPlan key, double lipBottom)
    {
        var reasons = new Reasons();
        LugRing ring = RingOf(draft);
        reasons.Choice(
            "closure.lugs", ring.Lugs.Length.ToString(CultureInfo.InvariantCulture), Reasons.Rule,
            $"by diameter; one stands {Reasons.Mm(Math.Round(OddShare * 360 / ring.Lugs.Length, 1))} degrees out of the spacing: it is "
                + $"the key");
        reasons.Choice(
            "closure.turn", $"{Reasons.Mm(Math.Round(ring.Turn.Degrees, 1))} degrees clockwise", Reasons.Rule,
            "a lug's length and its gaps");
        Sourced along = draft.File.Print.Printer.LayerFit;
        double bottom = lipBottom + along;
        return reasons.Of<ClosurePlan>(new TwistClosurePlan
        {
            Lugs = ring.Lugs,
            Odd = LugRing.Odd,
            LugSweep = ring.Sweep,
            Turn = ring.Turn,
            LugBottom = bottom,
            LugTop = bottom + LugFace,
            LugHeight = draft.Lip.Gap - draft.File.Print.Printer.LipCloses + Hold,
            Gap = Gap,
            AxialGap = along,
            RidgePress = reasons.Length(
                "closure.ridge.interference", RidgePress, Reasons.Rule,
                "what a lug rides over, so that the cover doesn't turn back by itself: a click for the hand"),
            RidgeLength = reasons.Length("closure.ridge.length", RidgeLength, Reasons.Rule, "along the wall, in front of each closed lug"),
        });
    }

    private static ClosureObstacle Because(string why, string? or) =>
        new("twist-cannot-turn", why, $"The cover can't be twisted shut: {why}.", or);

    // The upper face of a lug rises at 45 degrees from its outer face to the lip.
    private static double LugRise(double gap) => gap + Hold;

    private static LugRing RingOf(HousingDraft draft) => LugRing.Of(draft.File, draft.Shell, draft.OpeningsInPlan)
        ?? throw new InvalidOperationException("a twist lock was chosen for which the rim has no room");

    /// <summary>Lugs round the axis.</summary>
    /// <param name="Lugs">Middle of each when closed.</param>
    /// <param name="Sweep">Sweep of each.</param>
    /// <param name="Turn">From a lug's mouth to where it is closed.</param>
    private sealed record LugRing(ImmutableArray<Angle> Lugs, Angle Sweep, Angle Turn)
    {
        /// <summary>The lug that stands out of the even spacing.</summary>
        public const int Odd = 0;

        /// <summary>Where a lug enters.</summary>
        public Angle Mouth(int lug) => (Lugs[lug] + Turn).Normalized;

        /// <summary>The odd lug's mouth as near to the first LED as openings allow; null where they leave no room.</summary>
        public static LugRing? Of(BoardFile file, ShellPlan shell, ImmutableArray<OpeningInPlan> openings)
        {
            double radius = shell.Round!.Inner;
            int count = Math.Clamp((int)Math.Round(2 * radius / DiameterPerLug), 3, 6);
            double spacing = 360.0 / count;
            Angle sweep = Angle.FromDegrees(Math.Min(Angle.FromRadians(LugLength / radius).Degrees, LugShare * spacing));
            Angle turn = sweep + (4 * Angle.FromRadians(Gap / radius));
            (Angle At, double Half)[] taken =
            [
                .. openings.Select(opening => opening.InWall).OfType<WallStretch>().Select(wall => (
                    RimSectors.Crossing(wall.Through, wall.Direction, radius),
                    Angle.FromRadians(((wall.Width / 2) + BesidePort) / radius).Degrees)),
            ];
            Angle mark = (KeyDecision.FirstPixel(file) ?? file.Up) - turn - Angle.FromDegrees(OddShare * spacing);
            for (int away = 0; away <= 360; away += StepDegrees)
            {
                Angle first = mark
                    + Angle.FromDegrees((away / StepDegrees % 2 == 0 ? 1 : -1) * ((away / StepDegrees) + 1) / 2 * StepDegrees);
                ImmutableArray<Angle> lugs =
                [
                    .. Enumerable.Range(0, count)
                        .Select(i => (first + Angle.FromDegrees((i * spacing) + (i == Odd ? OddShare * spacing : 0))).Normalized),
                ];

                // A lug sweeps from its mouth to where it is closed.
                double half = (sweep.Degrees + turn.Degrees) / 2;
                if (lugs.All(lug => taken.All(each => Angle.Between(lug + (0.5 * turn), each.At).Degrees > half + each.Half)))
                {
                    return new LugRing(lugs, sweep, turn);
                }
            }

            return null;
        }
    }
}
