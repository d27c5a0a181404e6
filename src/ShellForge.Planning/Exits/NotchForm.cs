using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Floors;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Exits;

/// <summary>
/// The exit of a soldered round cable: a notch open to the parting line, so that a moulded plug need not pass it, closed by a tongue
/// on the cover; and a post for a tie (or room for a knot) that takes the pull before the solder does.
/// </summary>
internal sealed class NotchForm(RoundCable cable) : ExitForm(cable)
{
    /// <summary>Narrowest tongue, mm: a free-standing pillar of plastic below that snaps off across its layers.</summary>
    private const double LeastTongue = 6.0;

    /// <summary>Wanted chamfer along the notch's edges, mm. Typical: at least 1, as far as the wall is thick enough.</summary>
    private const double EdgeChamfer = 1.0;

    /// <summary>From the wall's inner face to the tie post, mm: a tie's head and fingers.</summary>
    private const double PostFromWall = 2.0;

    /// <summary>An anchor farther inside than this no longer holds the cable's way, mm. Typical.</summary>
    private const double FarthestAnchor = 40;

    /// <summary>Least width of a post across the cable, mm: 3 x 5 saddles.</summary>
    private const double LeastPostWidth = 5.0;

    /// <summary>Air between the tongue and the cable's crown, mm.</summary>
    private const double OverCable = 0.3;

    // Wall left beside a hole that is closed above, mm: three lines.
    private const double BesideHole = 1.2;

    // Width that a cable with its tie post takes at least, mm: a saddle of 5.
    private const double LeastWay = 5;

    /// <inheritdoc />
    public override ExitKind Kind => ExitKind.Wall;

    /// <inheritdoc />
    public override bool HasTongue => true;

    /// <inheritdoc />
    public override (Angle At, double HalfWidth)? AtRim => (Cable.At, Cable.Diameter);

    /// <inheritdoc />
    public override (string What, double Height) BelowBoard(BoardFile file) => Cable.Relief == ReliefKind.Tie
        ? ("the cable on its tie post", PlanRules.TieSlotHeight + PlanRules.TieBridge + Cable.Diameter + PlanRules.TieOverCable)
        : ("the knot in the cable", PlanRules.KnotHeight * Cable.Diameter);

    /// <inheritdoc />
    public override Region Way(ShellPlan shell) => Strips.Radial(
        Cable.At, Math.Max(LeastWay, Cable.Diameter) + (4 * PlanRules.TieOverCable), 0, Strips.PastRim(shell.Footprint));

    /// <inheritdoc />
    public override CableExitPlan? Decide(HousingDraft draft, Reasons reasons)
    {
        ((BoardFile file, PrintBasis basis), ShellPlan shell, StackPlan stack) = (draft.Given, draft.Shell, draft.Stack);
        double notch = Cable.Diameter + PlanRules.NotchOver;
        double gap = file.Print.Printer.SlotFit;
        double tongueWidth = Math.Max(notch + 2, LeastTongue);
        if (TooNear(draft, tongueWidth + (2 * gap), reasons))
        {
            return null;
        }

        WallSpan wall = WallSpan.Outermost(shell, Cable.At, tongueWidth + (2 * gap))
            ?? new WallSpan(0, 0, shell.Wall);
        TiePostPlan? post = Cable.Relief == ReliefKind.Tie ? Post(draft, wall, reasons) : null;
        double bottom = post?.Top ?? basis.Down(stack.FloorTop + Math.Max(0, (stack.BoardBottom - stack.FloorTop - Cable.Diameter) / 2));
        double under = basis.Down(stack.PartingLine - PlanRules.OverOpening);
        bottom = post is null ? Math.Min(bottom, basis.Down(under - Cable.Diameter)) : bottom;
        if (bottom < stack.FloorTop - Layers.Slack || bottom + Cable.Diameter > under + Layers.Slack)
        {
            RefuseUnderCover(stack, wall, under - Math.Max(bottom, stack.FloorTop), post is not null, reasons);
            return null;
        }

        double tongueBottom = Math.Min(basis.Up(bottom + Cable.Diameter + OverCable), under);
        double chamfer = Math.Min(EdgeChamfer, Math.Max(0, Math.Floor(10 * ((shell.Wall / 2) - 0.2)) / 10));
        reasons.Choice($"{DecisionPath}.exit", "notch open to the parting line, closed by a tongue on the cover", Reasons.Rule,
            "a moulded plug passes no closed hole, and nobody wants to unsolder for rework");
        if (Cable.PlugWidth > 0)
        {
            reasons.Choice($"{DecisionPath}.plug", $"{Reasons.Mm(Cable.PlugWidth)} x {Reasons.Mm(Cable.PlugHeight)}",
                Reasons.Origin(file, $"{Cable.Path}.plug"),
                "passes: the notch is open to the parting line, so the cable is laid in from above with its plug outside, whatever its "
                    + "size");
        }

        reasons.Length($"{DecisionPath}.notch-width", notch, Reasons.Origin(file, $"{Cable.Path}.round"),
            $"the cable and {Reasons.Mm(PlanRules.NotchOver)}");
        reasons.Length($"{DecisionPath}.notch-bottom", bottom, Reasons.Rule,
            post is null ? "in the middle of the room under the board" : "level with the cable's seat on its post");
        return new NotchExitPlan
        {
            At = Cable.At,
            Cable = Cable,
            Name = Name,
            WallInner = wall.InnerLeast,
            WallFace = wall.OuterMost,
            NotchWidth = notch,
            NotchBottom = bottom,
            Roof = new TonguePlan(tongueWidth, tongueBottom, gap, shell.Wall, tongueWidth + (2 * gap)),
            EdgeChamfer = chamfer,
            TiePost = post,
            KnotRoom = post is null ? PlanRules.KnotInPlan * Cable.Diameter / 2 : 0,
        };
    }

    private void RefuseUnderCover(StackPlan stack, WallSpan wall, double room, bool onPost, Reasons reasons)
    {
        Point2 at = Point2.Polar(wall.OuterMost, Cable.At);
        reasons.Refuse(
            "cable-exit-without-place", Subject,
            $"The tub's wall leaves {Reasons.Mm(Math.Round(Math.Max(0, room), 2))} mm between {(onPost ? "the cable's tie post" : "floor")} "
                + $"and cover, the cable is {Reasons.Mm(Cable.Diameter)} thick. It is planned without an exit.",
            room, Cable.Diameter, "mm", new Point3(at.X, at.Y, stack.PartingLine),
            $"{(onPost ? "'relief: knot', " : "")}'through: floor', or a thinner cable");
    }

    // Between two slots that are open to the rim the wall stands free, as a tongue hangs; beside a hole it is held above.
    private bool TooNear(HousingDraft draft, double width, Reasons reasons)
    {
        var rim = RimSectors.Of(draft);
        IEnumerable<(string What, double Lacks)> near = draft.Openings.Where(opening => opening.InWall is not null)
            .Select(opening => (What: opening.NameOf(FaceFeature.Port), At: RimSectors.Crossing(
                opening.InWall!.Through, opening.InWall.Direction, rim.Radius), opening.InWall.Width, opening.InWall.OpensRim))
            .Concat(draft.CableExits.Where(exit => exit.AtRim is not null)
                .Select(exit => (What: exit.Spoken, exit.AtRim!.At, exit.AtRim.Width, exit.AtRim.OpensRim)))
            .Select(other => (other.What, Lacks: (other.OpensRim ? LeastTongue : BesideHole) - (
                (Angle.Between(Cable.At, other.At).Radians * rim.RadiusAt(Cable.At)) - ((width + other.Width) / 2))))
            .Where(other => other.Lacks > Layers.Slack);
        if (near.OrderByDescending(other => other.Lacks).FirstOrDefault() is not ({ } what, var lacks))
        {
            return false;
        }

        Point2 at = Point2.Polar(rim.RadiusAt(Cable.At), Cable.At);
        string free = rim.NearestFree(Cable.At, width, LeastTongue) is { } angle
            ? $"'angle: {Reasons.Mm(Math.Round(angle.Normalized.Degrees))}', or " : "";
        reasons.Refuse(
            "cable-exit-without-place", Subject,
            $"Its notch comes {Reasons.Mm(Math.Round(lacks, 1))} mm too near to {what}: the wall between them would break. It is planned "
                + "without an exit.",
            0 - lacks, 0, "mm", new Point3(at.X, at.Y, draft.Stack.PartingLine), $"{free}'through: floor'");
        return true;
    }

    private TiePostPlan? Post(HousingDraft draft, WallSpan wall, Reasons reasons)
    {
        (PrintBasis basis, ShellPlan shell) = (draft.Basis, draft.Shell);
        var levels = new BoardLevels(draft.Stack.FloorTop, draft.Stack.BoardBottom, draft.Stack.BoardTop);
        double side = Math.Max(basis.Wall(PlanRules.BossWallLines), PlanRules.BossWall);
        double length = Math.Round(PlanRules.TieSlotWidth + (2 * side), 2);
        double width = Math.Max(LeastPostWidth, Math.Ceiling(Cable.Diameter));
        double top = basis.Up(levels.FloorTop + PlanRules.TieSlotHeight + PlanRules.TieBridge);
        double ceiling = top + Cable.Diameter + PlanRules.TieOverCable;
        var room = new BelowBoardRoom(new TubDraft(draft.File, basis, shell, levels, draft.Openings)
        {
            Bay = draft.Bay,
            SecondBoard = draft.SecondBoard,
        });
        Region onFloor = draft.OnFloor;
        for (double inside = 0; inside <= FarthestAnchor; inside += 1)
        {
            double u = wall.InnerLeast - PostFromWall - inside - (length / 2);
            Point2 at = Lattice.Snap(Point2.Polar(u, Cable.At));
            Region foot = PartEnvelope.Rectangle(at, length, width, Cable.At);
            Region withTie = PartEnvelope.Rectangle(at, PlanRules.TieSlotWidth, width + (4 * PlanRules.TieOverCable), Cable.At).And(foot);
            Region way = PartEnvelope.Rectangle(
                Point2.Polar((u + wall.InnerLeast) / 2, Cable.At), wall.InnerLeast - u, Cable.Diameter, Cable.At);
            bool free = u > 0 && shell.Cavity.Contains(withTie)
                && draft.Bosses.All(b => withTie.And(way).Distance(b.At) > (b.Diameter / 2) + PlanRules.Beside
                    && b.Webs.All(w => w.Distance(withTie) > PlanRules.Beside))
                && (onFloor.IsEmpty || onFloor.Distance(way) > PlanRules.Beside)
                && draft.CableExits.All(exit => exit.TakenInside(shell, PlanRules.Beside).Distance(withTie) > 0)
                && room.Ceiling(withTie) >= Math.Min(ceiling, levels.BoardBottom) - Layers.Slack;
            if (free)
            {
                reasons.Length($"{DecisionPath}.tie-post", Math.Round(u, 2), Reasons.Rule,
                    "distance of the tie post from the housing's axis: the nearest free place to the notch");
                return new TiePostPlan(at, Cable.At, length, width, top, basis.UpDistance(PlanRules.TieSlotHeight), PlanRules.TieSlotWidth);
            }
        }

        reasons.Replace("no-room-for-tie-post", Subject,
            $"within {Reasons.Mm(FarthestAnchor)} mm of the notch no place is free for a tie post of {Reasons.Mm(length)} x "
                + $"{Reasons.Mm(width)} mm; planned for a knot",
            0, length, "mm",
            new Point3(Point2.Polar(wall.InnerLeast, Cable.At).X, Point2.Polar(wall.InnerLeast, Cable.At).Y, levels.FloorTop),
            "turn the exit to another angle, or say relief: knot");
        return null;
    }
}
