using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Mounts;

/// <summary>Decides how the housing is hung or stood: what it needs of floor and depth, and then where it goes.</summary>
internal static class MountDecision
{
    // Left round a mount, mm.
    private const double Rib = 2.0;

    // Clear under the board, mm.
    private const double UnderBoard = 0.6;

    /// <summary>What a mount asks of the tub, before the stack is decided.</summary>
    public static Decided<MountNeeds> Needs(BoardFile file, PrintBasis basis)
    {
        var reasons = new Reasons();
        MountNeeds needs = file.Housing.Mount switch
        {
            MountKind.Keyhole => Over(KeyholeDecision.LipTop(basis), KeyholeDecision.BlockTop(basis), "the keyhole's undercut and cap"),
            MountKind.Magnets => Over(0, MagnetDecision.Rim(basis), "the magnets' pockets"),
            MountKind.Tripod => Over(0, TripodDecision.BossTop(basis), "the tripod insert"),
            _ => new MountNeeds(0, 0, ""),
        };

        // Below-board room counts from the floor's inner face, which is not decided yet: from the floor asked for, or the default.
        double floor = basis.Up(Math.Max(file.Housing.Floor ?? PlanRules.Floor, needs.Floor));
        return reasons.Of(needs.BelowBoard == 0 ? needs : needs with { BelowBoard = Math.Max(0, needs.BelowBoard - floor) });
    }

    /// <summary>The mount; null for none.</summary>
    public static Decided<MountPlan?> Decide(HousingDraft draft)
    {
        var reasons = new Reasons();
        string from = Reasons.Origin(draft.File, "housing.mount");
        MountPlan? mount = draft.File.Housing.Mount switch
        {
            MountKind.Keyhole => KeyholeDecision.Decide(draft, reasons),
            MountKind.Magnets => MagnetDecision.Decide(draft, reasons),
            MountKind.Tripod => TripodDecision.Decide(draft, reasons),
            MountKind.Stand => StandDecision.Decide(draft, reasons),
            _ => null,
        };
        reasons.Choice("mount", draft.File.Housing.Mount.ToString().ToLower(CultureInfo.InvariantCulture), from,
            mount is null && draft.File.Housing.Mount != MountKind.None ? "asked for, but no place was found" : "as asked");
        return reasons.Of(mount);
    }

    /// <summary>
    /// The places, on circles about the axis, where a shape fits into a room, nearest to a wanted direction first.
    /// </summary>
    /// <param name="room">Where it may go.</param>
    /// <param name="towards">The direction to look in first.</param>
    /// <param name="inside">Radius of a circle about its place that lies inside the shape, mm: what is nearer to an outline needs no second look.</param>
    /// <param name="shape">The shape at a place.</param>
    public static IEnumerable<Point2> Places(Region room, Angle towards, double inside, Func<Point2, Region> shape)
    {
        if (room.IsEmpty)
        {
            yield break;
        }

        const double step = 2.0;
        const int directions = 72;
        double reach = Math.Max(room.Bounds.Max.X, room.Bounds.Max.Y) - inside;
        for (int turn = 0; turn <= directions; turn++)
        {
            Angle at = towards + Angle.FromDegrees((turn % 2 == 0 ? 1 : -1) * ((turn + 1) / 2) * (360.0 / directions));
            for (double radius = reach; radius >= 0; radius -= step)
            {
                Point2 place = Point2.Polar(radius, at);
                if (!room.IsNearOutline(place, inside) && Fits(room, place, shape))
                {
                    yield return place;
                }
            }
        }
    }

    /// <summary>Whether a shape lies in a room; corners are asked first, which settles most places without an overlay.</summary>
    public static bool Fits(Region room, Point2 place, Func<Point2, Region> shape)
    {
        if (!room.Contains(place))
        {
            return false;
        }

        Region outline = shape(place);
        return outline.Loops[0].All(room.Contains) && room.Contains(outline);
    }

    /// <summary>What a mount takes of the floor, with a rib round it.</summary>
    public static Region Taken(MountPlan? mount) => mount switch
    {
        KeyholeMountPlan keyholes => Region.Union(keyholes.Keyholes.Select(hole =>
            Region.Slot(hole.Entry, hole.Seat, keyholes.EntryDiameter + (2 * keyholes.BlockWall) + Rib))),
        MagnetMountPlan magnets => Region.Union(magnets.At.Select(at =>
            Region.Disc(at, Ring.Hole((magnets.CollarDiameter / 2) + Rib)))),
        TripodMountPlan tripod => Region.Disc(tripod.At, Ring.Hole((tripod.LandDiameter / 2) + Rib)),
        _ => Region.Empty,
    };

    private static MountNeeds Over(double floor, double top, string why) => new(floor, top + UnderBoard, why);
}
