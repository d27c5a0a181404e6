using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;
using ShellForge.Planning.Posts;

namespace ShellForge.Planning.Ports;

/// <summary>
/// The exit of a soldered round cable: a notch open to the parting line, so that a moulded plug need not pass it, closed by a tongue
/// on the cover; and a post for a tie (or room for a knot) that takes the pull before the solder does.
/// </summary>
internal static class CableExitDecision
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

    /// <summary>Decides the exit; null when no round cable is asked for.</summary>
    public static Decided<CableExitPlan?> Decide(
        BoardFile file, PrintBasis basis, ShellPlan shell, BoardLevels levels, double parting, ImmutableArray<BossPlan> bosses)
    {
        var reasons = new Reasons();
        if (file.Housing.Cable is not RoundCable cable)
        {
            return reasons.Of<CableExitPlan?>(null);
        }

        double notch = cable.Diameter + PlanRules.NotchOver;
        double gap = file.Print.Printer.NormalFit;
        double tongueWidth = Math.Max(notch + 2, LeastTongue);
        WallSpan wall = WallSpan.Ahead(shell, cable.At, 0, tongueWidth + (2 * gap), From(shell, cable.At))
            ?? new WallSpan(0, 0, shell.Wall);
        TiePostPlan? post = cable.Relief == ReliefKind.Tie ? Post(file, cable, basis, shell, levels, wall, bosses, reasons) : null;
        double bottom = post?.Top ?? basis.Down(levels.FloorTop + Math.Max(0, (levels.BoardBottom - levels.FloorTop - cable.Diameter) / 2));
        double tongueBottom = Math.Min(basis.Up(bottom + cable.Diameter + OverCable), basis.Down(parting - PlanRules.OverOpening));
        double chamfer = Math.Min(EdgeChamfer, Math.Max(0, Math.Floor(10 * ((shell.Wall / 2) - 0.2)) / 10));
        reasons.Choice("cable.exit", "notch open to the parting line, closed by a tongue on the cover", Reasons.Rule,
            "a moulded plug passes no closed hole, and nobody wants to unsolder for rework");
        if (cable.PlugWidth > 0)
        {
            reasons.Choice("cable.plug", $"{Reasons.Mm(cable.PlugWidth)} x {Reasons.Mm(cable.PlugHeight)}", Reasons.Origin(file, "housing.cable.plug"),
                "passes: the notch is open to the parting line, so the cable is laid in from above with its plug outside, whatever its size");
        }

        reasons.Length("cable.notch-width", notch, Reasons.Origin(file, "housing.cable.round"), $"the cable and {Reasons.Mm(PlanRules.NotchOver)}");
        reasons.Length("cable.notch-bottom", bottom, Reasons.Rule, post is null ? "in the middle of the room under the board" : "level with the cable's seat on its post");
        return reasons.Of<CableExitPlan?>(new CableExitPlan
        {
            At = cable.At,
            CableDiameter = cable.Diameter,
            WallInner = wall.InnerLeast,
            WallFace = wall.OuterMost,
            NotchWidth = notch,
            NotchBottom = bottom,
            Tongue = new TonguePlan(tongueWidth, tongueBottom, gap, shell.Wall, tongueWidth + (2 * gap)),
            EdgeChamfer = chamfer,
            TiePost = post,
            KnotRoom = post is null ? PlanRules.KnotInPlan * cable.Diameter / 2 : 0,
        });
    }

    // A start between the walls: from the axis a ring would meet its bore wall first.
    private static double From(ShellPlan shell, Angle direction)
    {
        Region along = shell.Cavity.Turned(Angle.Zero - direction)
            .Intersect(Region.Rectangle(new Point2(0, -0.5), new Point2(Lattice.LimitMillimetres, 0.5)));
        Box2? last = along.Parts.Select(p => (Box2?)p.Bounds).MaxBy(b => b!.Value.Max.X);
        return last is { } room ? (room.Min.X + room.Max.X) / 2 : 0;
    }

    private static TiePostPlan? Post(
        BoardFile file, RoundCable cable, PrintBasis basis, ShellPlan shell, BoardLevels levels, WallSpan wall,
        ImmutableArray<BossPlan> bosses, Reasons reasons)
    {
        double side = Math.Max(basis.Wall(PlanRules.BossWallLines), PlanRules.BossWall);
        double length = Math.Round(PlanRules.TieSlotWidth + (2 * side), 2);
        double width = Math.Max(LeastPostWidth, Math.Ceiling(cable.Diameter));
        double top = basis.Up(levels.FloorTop + PlanRules.TieSlotHeight + PlanRules.TieBridge);
        double ceiling = top + cable.Diameter + PlanRules.TieOverCable;
        var room = new BelowBoardRoom(file, shell, levels);
        for (double inside = 0; inside <= FarthestAnchor; inside += 1)
        {
            double u = wall.InnerLeast - PostFromWall - inside - (length / 2);
            Point2 at = Lattice.Snap(Point2.Polar(u, cable.At));
            Region foot = PartEnvelope.Rectangle(at, length, width, cable.At);
            Region withTie = PartEnvelope.Rectangle(at, PlanRules.TieSlotWidth, width + (4 * PlanRules.TieOverCable), cable.At).And(foot);
            Region way = PartEnvelope.Rectangle(
                Point2.Polar((u + wall.InnerLeast) / 2, cable.At), wall.InnerLeast - u, cable.Diameter, cable.At);
            bool free = u > 0 && shell.Cavity.Contains(withTie)
                && bosses.All(b => withTie.And(way).Distance(b.At) > (b.Diameter / 2) + PlanRules.Beside
                    && b.Webs.All(w => w.Distance(withTie) > PlanRules.Beside))
                && room.Ceiling(withTie) >= Math.Min(ceiling, levels.BoardBottom) - Layers.Slack;
            if (free)
            {
                reasons.Length("cable.tie-post", Math.Round(u, 2), Reasons.Rule, "distance of the tie post from the housing's axis: the nearest free place to the notch");
                return new TiePostPlan(at, cable.At, length, width, top, basis.UpDistance(PlanRules.TieSlotHeight), PlanRules.TieSlotWidth);
            }
        }

        reasons.Replace("no-room-for-tie-post", "cable exit",
            $"within {Reasons.Mm(FarthestAnchor)} of the notch no place is free for a tie post of {Reasons.Mm(length)} x {Reasons.Mm(width)}; planned for a knot",
            0, length, "mm", new Point3(Point2.Polar(wall.InnerLeast, cable.At).X, Point2.Polar(wall.InnerLeast, cable.At).Y, levels.FloorTop),
            "turn the exit to another angle, or say relief: knot");
        return null;
    }
}
