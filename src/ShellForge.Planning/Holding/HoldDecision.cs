using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Holding;

/// <summary>
/// What keeps the board where it is in the closed housing. Screws do it all. A board without them is kept down by the baffle that the
/// cover presses onto it, else by the cover's lip over its rim, else by posts under the cover; the wall keeps it in plan, and what stops it
/// from turning is looked for. What nothing holds is told.
/// </summary>
internal static class HoldDecision
{
    /// <summary>A board that rises no farther than this still meets its plug, mm. Typical.</summary>
    public const double MostRise = 0.6;

    // The lip still reaches over the rim by this when the board lies against the wall across, mm.
    private const double LipOver = 0.2;

    // A single screw nearer to the middle than this lets the board turn about it, mm.
    private const double AtMiddle = 3;

    // How far posts at the rim reach over the board, mm: as far as a rest reaches under it at the least.
    private static readonly ImmutableArray<double> StopsOver = [2.5, PlanRules.RestOverlap];

    private const int SupportsWanted = 3;

    private sealed record KeptDown(string? By, double Rise, ImmutableArray<BoardStopPlan> Stops, double StopBottom, string Why);

    /// <summary>What holds the board.</summary>
    public static Decided<BoardHoldPlan> Decide(
        HousingDraft draft, FrontSide front, ClosurePlan closure, HolderPlan? holder)
    {
        var reasons = new Reasons();
        KeptDown down = Held(draft, holder) ?? Screwed(draft) ?? Pressed(draft, front, closure.TurnsCover) ?? UnderLip(draft, front.Cover)
            ?? UnderStops(draft, front, closure) ?? new KeptDown(null, 0, [], 0, "");
        if (draft.Hold.Form.Kind != HoldKind.Auto)
        {
            string origin = Reasons.Origin(draft.File, "housing.hold");
            reasons.Choice("hold", draft.Hold.Form.Kind.ToString().ToLower(CultureInfo.InvariantCulture), origin,
                draft.File.Housing.Hold == HoldKind.Auto ? "the closed housing alone does not hold the board down" : "as asked");
        }

        Point2 centre = BoardMass.Centre(draft.File.Board);
        var at = new Point3(centre.X, centre.Y, draft.Stack.BoardTop);
        if (down.By is null)
        {
            reasons.Refuse(
                "board-not-kept-down", "board",
                "nothing keeps the board down: it has no screw, no baffle presses it, and parts leave no room for posts of the cover",
                0, SupportsWanted, "", at, ToHold(draft.File.Housing));
        }
        else
        {
            reasons.Choice("hold.down", down.By, Reasons.Rule, down.Why);
        }

        if (!down.Stops.IsEmpty)
        {
            reasons.Choice("hold.stops", down.Stops.Length.ToString(CultureInfo.InvariantCulture), Reasons.Rule,
                $"posts under the cover round the board's centre of mass, {Reasons.Mm(down.Rise)} mm above it: they let the cover close "
                    + "over a board a tenth thicker than listed");
        }

        (Angle Turn, string By)? turn = ByScrews(draft) is { } screws ? (Angle.Zero, screws)
            : holder is { StopsTurning: true } ? (Angle.Zero, "what presses its rim")
            : TurnStop.Of(draft, front, closure.TurnsCover, down.Stops);
        if (turn is null)
        {
            reasons.Replace(
                "board-turns", "board",
                "nothing stops the board from turning in its place: a pull at its leads turns it",
                0, 1, "", at, Remedy(draft, front.Baffle));
        }
        else
        {
            reasons.Choice("hold.turns", turn.Value.Turn == Angle.Zero ? "not"
                : string.Create(CultureInfo.InvariantCulture, $"less than {turn.Value.Turn.Degrees:0} degrees"), Reasons.Rule,
                $"stopped by {turn.Value.By}");
        }

        return reasons.Of(new BoardHoldPlan
        {
            DownBy = down.By,
            Rise = down.Rise,
            Holder = holder,
            Stops = down.Stops,
            StopBottom = down.StopBottom,
            TurnStoppedBy = turn?.By,
            Turn = turn?.Turn ?? Angle.Zero,
        });
    }

    private static BossPlan[] Screws(HousingDraft draft) => [.. draft.Bosses.Where(boss => boss.Use is BossUse.Board or BossUse.Both)];

    private static KeptDown? Held(HousingDraft draft, HolderPlan? holder)
    {
        if (holder is null)
        {
            return null;
        }

        bool screwed = Screwed(draft) is not null;
        return new KeptDown(
            screwed ? $"{holder.DownBy}, and {Screwed(draft)!.By}" : holder.DownBy, screwed ? 0 : holder.Rise, [], 0,
            "it lies over the board's rim round the centre of mass");
    }

    private static KeptDown? Screwed(HousingDraft draft) => Screws(draft) is { Length: > 0 } screws
        ? new KeptDown(screws.Length == 1 ? "by its screw" : $"by its {screws.Length.ToString(CultureInfo.InvariantCulture)} screws", 0, [],
            0, "screws clamp it onto their posts")
        : null;

    private static KeptDown? Pressed(HousingDraft draft, FrontSide front, bool turnsCover) =>
        !turnsCover && front.Baffle is { CrushRibs.IsEmpty: false } baffle
            && IsRoundCentre(draft, baffle.Walls.Less(Region.Union(baffle.Notches.Select(notch => notch.Outline))))
            ? new KeptDown("by the baffle", 0, [], 0, "the baffle stands on it, and the cover presses its crush ribs")
            : null;

    private static KeptDown? UnderLip(HousingDraft draft, CoverPlan cover)
    {
        double rise = Math.Round(cover.LipBottom - draft.Stack.BoardTop, 6);
        Region kept = draft.File.Board.Outline.Region.Offset(-draft.Shell.BoardEdgeGap - LipOver);
        return rise is > 0 and <= MostRise && IsRoundCentre(draft, cover.Lip.Intersect(kept))
            ? new KeptDown("by the cover's lip", rise, [], 0,
                $"it ends {Reasons.Mm(rise)} mm above the board, and reaches over its rim also when the board lies against the wall across")
            : null;
    }

    private static KeptDown? UnderStops(HousingDraft draft, FrontSide front, ClosurePlan closure)
    {
        double height = draft.Basis.Down(draft.Stack.Front - draft.Stack.BoardTop - draft.Lip.AboveBoard);
        double bottom = Math.Round(draft.Stack.Front - height, 6);
        double rise = Math.Round(bottom - draft.Stack.BoardTop, 6);
        CircuitBoard board = draft.File.Board;
        var wish = new SupportWish([], 0, SupportsWanted, BoardMass.Centre(board), SupportChoice.Apart * 2 * board.Outline.OuterRadius);
        var places = new StopPlaces(draft, front, closure, height);
        foreach (double over in StopsOver)
        {
            ImmutableArray<BoardStopPlan> free = places.Free(over);
            ImmutableArray<Point2> at = [.. free.Select(stop => stop.Over)];
            ImmutableArray<int> chosen = SupportChoice.Choose(wish, at);
            if (rise <= MostRise && SupportChoice.Polygon(wish, at, chosen).Inside(wish.Centre) > 0)
            {
                return new KeptDown("by posts under the cover", rise, [.. chosen.Select(i => free[i])], bottom,
                    $"they end {Reasons.Mm(rise)} mm above it");
            }
        }

        return null;
    }

    private static bool IsRoundCentre(HousingDraft draft, Region pressing)
    {
        Region over = pressing.Intersect(draft.File.Board.Outline.Region);
        return SupportPolygon.Of(over.Loops.SelectMany(loop => loop)).Inside(BoardMass.Centre(draft.File.Board)) > 0;
    }

    private static string? ByScrews(HousingDraft draft) => Screws(draft) switch
    {
        [] => null,
        [var one] when one.At.Length < AtMiddle => null,
        [_] => "its screw, and the wall round it",
        _ => "its screws",
    };

    private static string ToHold(HousingSpec housing)
    {
        string ring = housing.Insert is null || housing.Screw is null ? "name 'insert' and 'screw' for a clamp ring, " : "";
        return $"{ring}give the board mounting holes, or leave parts away from its rim";
    }

    // A baffle without a tooth would turn with the board.
    private static string Remedy(HousingDraft draft, BafflePlan? baffle)
    {
        string cells = baffle is { Cells: false, Tooth: not null } && draft.File.Housing.Light.Look == LightLook.Blend
            ? ", or 'look: pixels', whose cells hold its LEDs" : "";
        return $"a connector that reaches into its opening ('past-edge'), or a mounting hole off the middle{cells}";
    }
}
