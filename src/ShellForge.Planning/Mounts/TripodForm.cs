using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Floors;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Mounts;

/// <summary>
/// A 1/4-20 heat-set insert of 12.7 length, set from below. Tripod screws stand out 4.5 to 6, some 10; its land lets the plate sit flat.
/// Source: insert makers' charts (hole 8.0 for printed parts), ISO 1222 for the screw.
/// </summary>
internal sealed class TripodForm : MountForm
{
    private const double Hole = 8.0;
    private const double Depth = 13.7;
    private const double Insert = 12.7;
    private const double Body = 8.55;
    private const double LeadIn = 0.4;
    private const double Boss = 16.0;
    private const double PlasticOver = 1.2;
    private const double Land = 25.0;

    // A disc's polygon lies a little inside its circle.
    private const double InnerShare = 0.99;

    /// <inheritdoc />
    public override MountKind Kind => MountKind.Tripod;

    /// <inheritdoc />
    public override string Why => "the tripod insert";

    /// <inheritdoc />
    public override double FloorLeast(PrintBasis basis) => 0;

    /// <inheritdoc />
    public override double Top(Given given) => given.Basis.Up(Depth + PlasticOver);

    /// <inheritdoc />
    public override MountPlan? Decide(HousingDraft draft, Reasons reasons)
    {
        double top = Top(draft.Given);
        Region room = FloorRoom.Inside(draft, top).Intersect(FloorRoom.Outside(draft, draft.Shell.Wall));
        if (Place(draft, room) is not var (at, why))
        {
            reasons.Refuse(
                "mount-without-place", "tripod", "Parts and posts leave no place for a tripod boss of 16 mm.",
                0, Boss, "mm", default, "mount: stand, keyhole or magnets, or a board with more room below");
            return null;
        }

        reasons.Length("mount.tripod.off-centre", Math.Round(at.Length, 2), Reasons.Rule, why);
        double level = 2 * (draft.Shell.Footprint.DistanceToOutline(at) - (draft.Shell.FloorEdge?.Inset ?? 0));
        double land = reasons.Length(
            "mount.tripod.land", Math.Round(Math.Min(Land, level), 2), Reasons.Rule,
            level < Land ? "less than 25 round the hole: tighten gently"
                : "flat round the hole for the plate");
        return new TripodMountPlan
        {
            At = at,
            HoleDiameter = Hole,
            HoleDepth = draft.Basis.Up(Depth),
            InsertLength = Insert,
            InsertDiameter = Body,
            LeadIn = LeadIn,
            BossDiameter = Boss,
            BossTop = top,
            LandDiameter = land,
        };
    }

    // On the middle; else on the vertical line, below before above, as near to the middle as it fits; else wherever it is nearest.
    private static (Point2 At, string Why)? Place(HousingDraft draft, Region room)
    {
        Region Shape(Point2 at) => Region.Disc(at, Ring.Hole(Boss / 2));
        if (FloorPlaces.Fits(room, Point2.Origin, Shape))
        {
            return (Point2.Origin, "in the middle: the weight stands over the screw");
        }

        if (room.IsEmpty)
        {
            return null;
        }

        const double step = 1.0;
        Angle down = draft.File.Up + Angle.FromDegrees(180);
        double reach = room.Loops.SelectMany(loop => loop).Max(point => point.Length);
        for (double radius = step; radius < reach; radius += step)
        {
            foreach (Angle way in new[] { down, draft.File.Up })
            {
                Point2 at = Point2.Polar(radius, way);
                if (!room.IsNearOutline(at, Boss / 2 * InnerShare) && FloorPlaces.Fits(room, at, Shape))
                {
                    return (at,
                        "on the vertical line, so that the weight does not turn it about the screw; parts, posts or the bore take the "
                            + "middle");
                }
            }
        }

        Point2? near = FloorPlaces.About(room, down, Boss / 2 * InnerShare, Shape).Select(place => (Point2?)place)
            .MinBy(place => place!.Value.Length);
        return near is { } found
            ? (found, "beside the vertical line, where parts and posts leave room: tighten it well, its weight turns it about the "
                + "screw") : null;
    }
}
