using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features;

/// <summary>
/// The cover's posts down to the closure bosses, with hole and counterbore. The cover is printed face down, so the seat under the head
/// is a roof: its first layer bridges past the hole as a slot, the next across it as a square, and only then comes the round hole.
/// </summary>
internal static class ClosurePosts
{
    /// <summary>Posts, holes and counterbores; nothing for other closures.</summary>
    public static IEnumerable<FeatureContribution> Of(HousingPlan plan)
    {
        if (plan.Closure is not ScrewClosurePlan closure)
        {
            yield break;
        }

        const double overlap = FeatureContribution.Overlap;
        double front = plan.Stack.Front;
        double layer = plan.Source.Print.Printer.LayerHeight;
        for (int i = 0; i < closure.ScrewNames.Length; i++)
        {
            ScrewJointPlan screw = plan.Screws.First(s => s.Name == closure.ScrewNames[i]);
            if (plan.Shell.Lobes.All(lobe => lobe.At != screw.At))
            {
                Region post = Region.Disc(screw.At, Ring.Peg(closure.PostDiameter / 2));
                yield return FeatureContribution.Adds(
                    PartNames.Cover, Shapes.Extrude(post, closure.PostBottom, front).Tagged(FaceNames.Tag(FaceFeature.Post, i)));
            }

            Region hole = Region.Disc(screw.At, Ring.Hole(screw.PassDiameter / 2));
            Region sunk = Region.Disc(screw.At, Ring.Hole(screw.CounterboreDiameter / 2));
            Region slot = sunk.Intersect(PartEnvelope.Rectangle(screw.At, screw.CounterboreDiameter + 1, screw.PassDiameter, Angle.Zero));
            Region square = PartEnvelope.Rectangle(screw.At, screw.PassDiameter, screw.PassDiameter, Angle.Zero);
            double lowest = Math.Min(closure.PostBottom, plan.Stack.PartingLine) - overlap;
            yield return FeatureContribution.Cuts(PartNames.Cover, Solid.Union(
                Shapes.Extrude(hole, lowest, screw.SeatZ + overlap),
                Shapes.Extrude(square, screw.SeatZ - (2 * layer), screw.SeatZ + overlap),
                Shapes.Extrude(slot, screw.SeatZ - layer, screw.SeatZ + overlap)).Tagged(FaceNames.Tag(FaceFeature.ScrewHole, i)));
            yield return FeatureContribution.Cuts(
                PartNames.Cover, Shapes.Extrude(sunk, screw.SeatZ, front + overlap).Tagged(FaceNames.Tag(FaceFeature.Counterbore, i)));
        }
    }
}
