using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Mounts;

/// <summary>
/// A 1/4-20 heat-set insert of 12.7 length, set from below. Tripod screws stand out 4.5 to 6, some 10; its land lets the plate sit flat.
/// Source: insert makers' charts (hole 8.0 for printed parts), ISO 1222 for the screw.
/// </summary>
internal static class TripodDecision
{
    private const double Hole = 8.0;
    private const double Depth = 13.7;
    private const double LeadIn = 0.4;
    private const double Boss = 16.0;
    private const double PlasticOver = 1.2;
    private const double Land = 25.0;

    // A disc's polygon lies a little inside its circle.
    private const double InnerShare = 0.99;

    /// <summary>z of the boss's top.</summary>
    public static double BossTop(PrintBasis basis) => basis.Up(Depth + PlasticOver);

    /// <summary>The tripod insert of a tub.</summary>
    public static TripodMountPlan? Decide(HousingDraft draft, Reasons reasons)
    {
        Region room = FloorRoom.Inside(draft, BossTop(draft.Basis));
        Region Shape(Point2 at) => Region.Disc(at, Ring.Hole(Boss / 2));
        Angle down = draft.File.Up + Angle.FromDegrees(180);
        Point2? at = room.Contains(Point2.Origin) && room.Contains(Shape(Point2.Origin))
            ? Point2.Origin
            : MountDecision.Places(room, down, Boss / 2 * InnerShare, Shape).Select(place => (Point2?)place).FirstOrDefault();
        if (at is not Point2 found)
        {
            reasons.Refuse(
                "mount-without-place", "tripod", "Parts and posts leave no place for a tripod boss.",
                0, Boss, "mm", new Point3(0, 0, 0), "mount: keyhole or magnets, or a board with more room below");
            return null;
        }

        double land = Math.Min(Land, 2 * draft.Shell.Footprint.DistanceToOutline(found));
        reasons.Length("mount.tripod.land", Math.Round(land, 2), Reasons.Rule,
            land < Land ? "less than 25 round the hole: tighten gently" : "flat round the hole for the plate");
        return new TripodMountPlan(found, Hole, draft.Basis.Up(Depth), LeadIn, Boss, BossTop(draft.Basis), land);
    }
}
