using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features.Holders;

/// <content>Clips: slots that cut posts free of the wall, and hooks on them.</content>
internal sealed partial class HolderBodies
{
    /// <inheritdoc />
    public IEnumerable<FeatureContribution> Clips(ClipsPlan holder)
    {
        double rim = plan.Stack.PartingLine + Overlap;
        for (int i = 0; i < holder.Hooks.Length; i++)
        {
            (Point2 edge, Angle outward) = holder.Hooks[i];

            // Drawn from the side (outward from the board's edge, z), given its width, and set at its place.
            yield return FeatureContribution.Adds(PartNames.Tub, Shapes
                .Extrude(Region.Polygon(holder.HookSide), -holder.HookWidth / 2, holder.HookWidth / 2)
                .Moved(Transform3.TurnX(Angle.FromDegrees(90)).Then(Transform3.TurnZ(outward)).Then(Transform3.Shift(edge.X, edge.Y, 0)))
                .Tagged(Tag(i)));
        }

        yield return FeatureContribution.Cuts(
            PartNames.Tub, Shapes.Extrude(holder.Slots, holder.Bottom, rim).Tagged(Tag(holder.Hooks.Length)));
        yield return FeatureContribution.Cuts(
            PartNames.Tub, Shapes.Extrude(holder.Posts.Offset(Overlap), holder.Top, rim).Tagged(Tag(holder.Hooks.Length)));
    }
}
