using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features.Closures;

/// <summary>
/// The cover's posts down to the closure bosses, with hole and counterbore. The cover is printed face down, so the seat under the head
/// is a roof over the counterbore. It closes in steps of one layer, each of straight bridges between edges that the one before laid:
/// <code>
///      ___          ___          ___          ___
///     /| |\        /   \        /   \        /   ///    | | | |      | |_| |      | (_) |      |  o  |
///     \|_|/        \___/        \___/        \___/
///     slot         square       octagon      hole
/// </code>
/// </summary>
internal static class ClosurePosts
{
    /// <summary>Posts, holes and counterbores.</summary>
    public static IEnumerable<FeatureContribution> Of(HousingPlan plan, ScrewClosurePlan closure)
    {
        const double overlap = FeatureContribution.Overlap;
        double front = plan.Stack.Front;
        double layer = closure.BridgeHeight;
        ScrewJointPlan[] screws = [.. plan.Screws.Where(each => each.Use == ScrewUse.Closure)];
        for (int i = 0; i < screws.Length; i++)
        {
            ScrewJointPlan screw = screws[i];
            if (plan.Shell.Lobes.All(lobe => lobe.At != screw.At))
            {
                Region post = Region.Disc(screw.At, Ring.Peg(closure.PostDiameter / 2));
                yield return FeatureContribution.Adds(
                    PartNames.Cover, Shapes.Extrude(post, closure.PostBottom, front).Tagged(FaceNames.Tag(FaceFeature.Post, i)));
            }

            Region hole = Region.Disc(screw.At, Ring.Hole(screw.PassDiameter / 2));
            Region sunk = Region.Disc(screw.At, Ring.Hole(screw.CounterboreDiameter / 2));
            ImmutableArray<Region> steps =
            [
                sunk.Intersect(PartEnvelope.Rectangle(screw.At, screw.CounterboreDiameter + 1, screw.PassDiameter, Angle.Zero)),
                .. Closing(screw.At, screw.PassDiameter / 2, closure.BridgeStepOut),
            ];
            double lowest = Math.Min(closure.PostBottom, plan.Stack.PartingLine) - overlap;
            yield return FeatureContribution.Cuts(PartNames.Cover, Solid.Union(
            [
                Shapes.Extrude(hole, lowest, screw.SeatZ + overlap),
                .. steps.Select((step, n) => Shapes.Extrude(step, screw.SeatZ - ((n + 1) * layer), screw.SeatZ + overlap)),
            ]).Tagged(FaceNames.Tag(FaceFeature.ScrewHole, i)));
            yield return FeatureContribution.Cuts(
                PartNames.Cover, Shapes.Extrude(sunk, screw.SeatZ, front + overlap).Tagged(FaceNames.Tag(FaceFeature.Counterbore, i)));
        }
    }

    // Polygons round the hole with twice as many sides each, until the hole stands out into no corner by more than a layer may hang over.
    private static IEnumerable<Region> Closing(Point2 at, double radius, double stepOut)
    {
        const int fewest = 4;
        for (int sides = fewest; ; sides *= 2)
        {
            Angle half = Angle.FromDegrees(180.0 / sides);
            double corner = radius / half.Cos;
            yield return Region.Polygon(
                [.. Enumerable.Range(0, sides)
                    .Select(k => Lattice.Snap(at + Point2.Polar(corner, half + Angle.FromDegrees(360.0 * k / sides))))]);
            if (corner - radius <= stepOut)
            {
                yield break;
            }
        }
    }
}

/// <content>This form's bodies.</content>
internal sealed partial class ClosureBodies
{
    /// <inheritdoc />
    public IEnumerable<FeatureContribution> Screws(ScrewClosurePlan closure) => ClosurePosts.Of(_plan, closure);
}
