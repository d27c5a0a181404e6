using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features.Closures;

/// <summary>
/// Lugs on the lip and their slots in the tub's wall: down through the rim, then along under it with a ceiling at 45 degrees, up to a stop.
/// A small ridge that a lug rides over keeps the cover from turning back by itself.
/// </summary>
internal static class TwistLock
{
    /// <summary>Lugs and slots.</summary>
    public static IEnumerable<FeatureContribution> Of(HousingPlan plan, TwistClosurePlan twist)
    {
        RoundShell round = plan.Shell.Round
            ?? throw new InvalidOperationException("a twist lock is planned for a housing that is not round");
        const double overlap = FeatureContribution.Overlap;
        double lip = round.Inner - plan.Cover.LipGap;
        double tip = lip + twist.LugHeight;
        Angle half = 0.5 * twist.LugSweep;
        Angle gap = Angle.FromRadians(twist.Gap / round.Inner);
        double far = round.Outer + 1;

        Solid collar = Sloped(round, lip - overlap, tip, twist.LugBottom, twist.LugTop);
        double depth = tip + twist.Gap;
        Solid channel = Sloped(round, round.Inner - overlap, depth, twist.LugBottom - twist.AxialGap, twist.LugTop + twist.AxialGap);
        for (int i = 0; i < twist.Lugs.Length; i++)
        {
            Angle closed = twist.Lugs[i];
            Region lug = Region.Sector(lip - 1, far, closed - half, twist.LugSweep);
            yield return FeatureContribution.Adds(
                PartNames.Cover, Solid.Intersection(collar, Tall(plan, lug)).Tagged(FaceNames.Tag(FaceFeature.Lug, i)));

            // The cover turns clockwise to close, so a lug comes from a larger angle.
            Angle ridge = Angle.FromRadians(twist.RidgeLength / round.Inner);
            Region way = Region.Sector(lip - 1, far, closed - half - gap, twist.LugSweep + twist.Turn + (2 * gap));
            Region kept = Region.Sector(depth - twist.Gap - twist.RidgePress, far, closed + half + gap, ridge);
            Region entry = Region.Sector(round.Inner - overlap, depth, closed + twist.Turn - half - gap, twist.LugSweep + (2 * gap));
            yield return FeatureContribution.Cuts(PartNames.Tub, Solid.Union(
                Solid.Intersection(channel, Tall(plan, way.Less(kept))),
                Shapes.Extrude(entry, twist.LugBottom - twist.AxialGap, plan.Stack.PartingLine + overlap))
                    .Tagged(FaceNames.Tag(FaceFeature.Lug, i)));
        }
    }

    // A collar whose upper face rises inward at 45 degrees.
    private static Solid Sloped(RoundShell round, double inner, double outer, double bottom, double top) => Shapes.Revolve(
        [new(inner, bottom), new(outer, bottom), new(outer, top), new(inner, top + (outer - inner))],
        round.Count, Angle.Zero, RingSide.Outside);

    private static Solid Tall(HousingPlan plan, Region region) => Shapes.Extrude(region, 0, plan.Stack.Front);
}

/// <content>This form's bodies.</content>
internal sealed partial class ClosureBodies
{
    /// <inheritdoc />
    public IEnumerable<FeatureContribution> Twist(TwistClosurePlan closure) => TwistLock.Of(_plan, closure);
}
