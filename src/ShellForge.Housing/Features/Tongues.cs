using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features;

/// <summary>Tongues of the cover: pieces of the tub's wall that hang from the cover into a slot of it.</summary>
internal static class Tongues
{
    /// <summary>
    /// A tongue: the wall itself, as wide as the tongue, so that it ends flush inside and outside on a wall of any shape. Its root reaches
    /// into the cover's wall.
    /// </summary>
    public static Solid Solid(HousingPlan plan, TonguePlan tongue, Angle direction, double v, double fromU, double toU)
    {
        double top = plan.Stack.PartingLine + FeatureContribution.Overlap;
        Solid strip = Shapes.Extrude(
            Region.Rectangle(
                new Point2(v - (tongue.Width / 2), tongue.Bottom), new Point2(v + (tongue.Width / 2), top + FeatureContribution.Overlap)),
            fromU, toU).Moved(OutwardFrame.Facing(direction));
        return Geometry.Solids.Solid.Intersection(
            Shapes.Extrude(plan.Shell.Walls, tongue.Bottom - FeatureContribution.Overlap, top), strip);
    }
}
