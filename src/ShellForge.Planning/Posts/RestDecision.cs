using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Exits;
using ShellForge.Planning.Floors;
using ShellForge.Planning.Holding;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Posts;

/// <summary>
/// Rests under the board's free rim, grown out of the wall, where holes are too few or too far apart to carry it: so many and so placed
/// that the board tips neither by its own weight nor under a plug. Without any hole it lies on rests alone.
/// </summary>
internal static class RestDecision
{
    /// <summary>Board diameters from which a board wants 4 and 6 supports, mm. Typical: boards bow 0.75 %.</summary>
    private const double FourFrom = 120;

    /// <summary>See <see cref="FourFrom"/>.</summary>
    private const double SixFrom = 200;

    // Supports that leave no wider gap than this between them are enough from three on, degrees.
    private const double WidestGap = 150;

    // Corners that stand for the round face of a boss.
    private const int FaceCorners = 8;

    // Of the board over a rest at least so much must be laminate, mm2: notches in the edge leave less.
    private const double LeastCarried = 1.0;

    /// <summary>The rests.</summary>
    public static Decided<ImmutableArray<BossPlan>> Decide(TubDraft tub, ImmutableArray<BossPlan> bosses, BelowBoardRoom room)
    {
        BoardFile file = tub.File;
        var reasons = new Reasons();
        double diameter = 2 * file.Board.Outline.OuterRadius;
        int wanted = diameter >= SixFrom ? 6 : diameter >= FourFrom ? 4 : 3;
        BossPlan[] carrying = [.. bosses.Where(b => b.Use is BossUse.Board or BossUse.Both)];
        var wish = new SupportWish(
            [.. carrying.SelectMany(Face)], carrying.Length, wanted, BoardMass.Centre(file.Board), SupportChoice.Apart * diameter);
        (string Ref, Point2 At)[] pushed =
            [.. tub.Openings.OfType<PortPlan>().Select(port => (port.Ref, file.Board.Parts.First(part => part.Ref == port.Ref).At))];
        ImmutableArray<RimPlace> places = IsCarriedBy(carrying, wish) ? [] : Places(tub, bosses, room, wish, pushed);
        ImmutableArray<BossPlan> rests = [.. places.Select((place, i) => new BossPlan
        {
            Name = BossDecision.Numbered("rest", i + 1),
            Use = BossUse.Rest,
            At = Middle(place),
            Diameter = PlanRules.RestDiameter,
            Top = tub.Levels.BoardBottom,
        })];
        SupportPolygon carried = SupportPolygon.Of([.. wish.Given, .. places.Select(Carries)]);
        double margin = Rounded(carried.Inside(wish.Centre));
        int supports = carrying.Length + rests.Length;
        if (supports < 3 || margin < 0)
        {
            reasons.Refuse("board-not-carried", "board",
                supports < 3 ? string.Create(CultureInfo.InvariantCulture,
                    $"the board has {supports} supports: parts on its back leave no free rim for more")
                : $"the board tips: its centre of mass lies {Reasons.Mm(-margin)} mm outside of what carries it, since parts on its back "
                    + "leave no free rim there",
                supports < 3 ? supports : -margin, supports < 3 ? 3 : 0, supports < 3 ? "" : "mm",
                new Point3(wish.Centre.X, wish.Centre.Y, tub.Levels.BoardBottom),
                "leave parts away from the rim, or give the board mounting holes");
        }

        if (!rests.IsEmpty)
        {
            reasons.Choice("bosses.rests", rests.Length.ToString(CultureInfo.InvariantCulture), Reasons.Rule,
                $"the board has {carrying.Length} mounting holes and wants {wanted} supports round its centre of mass; a rest reaches "
                    + $"{Reasons.Mm(PlanRules.RestOverlap)} under its rim");
        }

        if (supports >= 3 && margin >= 0)
        {
            reasons.Length("hold.carried", margin, Reasons.Rule,
                string.Join("; ", pushed.Select(plug => Pushed(plug.Ref, Rounded(carried.Inside(plug.At))))
                    .Prepend("so far inside the polygon of its supports lies the board's centre of mass: it does not tip")));
        }

        return reasons.Of(rests);
    }

    private static string Pushed(string name, double inside) => inside >= 0
        ? $"{name} lies {Reasons.Mm(inside)} mm inside it"
        : $"{name} lies {Reasons.Mm(-inside)} mm outside it, so a plug pushed down there lifts the other side as far as what holds it down";

    // Bosses that stand all round, and round the centre of mass.
    private static bool IsCarriedBy(BossPlan[] carrying, SupportWish wish) =>
        carrying.Length >= 3 && SupportPolygon.Of(wish.Given).Inside(wish.Centre) > 0
            && (carrying.Length >= wish.Wanted || WidestOf([.. carrying.Select(b => Angle.Of(b.At).Normalized.Degrees)]) <= WidestGap);

    private static ImmutableArray<RimPlace> Places(
        TubDraft tub, ImmutableArray<BossPlan> bosses, BelowBoardRoom room, SupportWish wish, (string Ref, Point2 At)[] pushed)
    {
        BoardFile file = tub.File;
        Region cable = Region.Union(ExitForm.Of(file).Select(exit => exit.Way(tub.Shell)));
        Region within = PostRoom.Of(tub.Shell);
        ImmutableArray<RimPlace> places =
        [
            .. RimPlace.Of(file.Board.Outline, file.Up).Where(place =>
                Region.Disc(Middle(place), Ring.Peg(PlanRules.RestDiameter / 2)).Intersect(within) is var outline
                    && (cable.IsEmpty || outline.Distance(cable) > PlanRules.Beside)
                    && Carries(outline.Intersect(room.Board), room, tub.Levels) && IsFree(Middle(place), tub, bosses)),
        ];
        ImmutableArray<Point2> free = [.. places.Select(Carries)];
        ImmutableArray<int> chosen = SupportChoice.Choose(wish, free);
        SupportWish near = wish with { Apart = PlanRules.RestDiameter + PlanRules.TieDistance };
        foreach ((_, Point2 at) in pushed)
        {
            // One on either side of a connector, where there is room.
            for (int side = 0; side < 2 && SupportChoice.Toward(near, free, chosen, at) is int more; side++)
            {
                chosen = chosen.Add(more);
            }
        }

        return [.. chosen.Select(i => places[i])];
    }

    private static IEnumerable<Point2> Face(BossPlan boss) => Enumerable.Range(0, FaceCorners)
        .Select(i => boss.At + Point2.Polar(boss.Diameter / 2, Angle.FromDegrees(i * 360.0 / FaceCorners)));

    // The middle of what a rest has under the rim.
    private static Point2 Carries(RimPlace place) => place.Inside(PlanRules.RestOverlap / 2);

    private static double Rounded(double length) => Math.Round(length, 3);

    private static double WidestOf(double[] degrees)
    {
        double[] sorted = [.. degrees.Order()];
        return Enumerable.Range(0, sorted.Length)
            .Max(i => i + 1 < sorted.Length ? sorted[i + 1] - sorted[i] : sorted[0] + 360 - sorted[^1]);
    }

    // The rest's inner side reaches under the rim by the overlap; the rest of it fuses with the wall.
    private static Point2 Middle(RimPlace place) =>
        Lattice.Snap(place.Inside(PlanRules.RestOverlap - (PlanRules.RestDiameter / 2)));

    private static bool Carries(Region underBoard, BelowBoardRoom room, BoardLevels levels) =>
        underBoard.Area >= LeastCarried && room.Ceiling(underBoard) >= levels.BoardBottom;

    private static bool IsFree(Point2 middle, TubDraft tub, ImmutableArray<BossPlan> bosses) =>
        !tub.Openings.Any(opening => opening.IsBarredBy(middle, PlanRules.RestDiameter))
            && tub.Holds.All(hold =>
                hold.Post is not null || hold.Pocket.Distance(middle) > (PlanRules.RestDiameter / 2) + PlanRules.Beside)
            && bosses.All(b => Point2.Distance(b.At, middle) > ((b.Diameter + PlanRules.RestDiameter) / 2) + PlanRules.TieDistance);
}
