using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features.Mounts;

/// <content>The boss of a tripod insert, its hole open to the outer floor.</content>
internal sealed partial class MountBodies
{
    /// <inheritdoc />
    public IEnumerable<FeatureContribution> Tripod(TripodMountPlan mount)
    {
        foreach (FeatureContribution body in Rising(Region.Disc(mount.At, Ring.Peg(mount.BossDiameter / 2)), mount.BossTop, 0))
        {
            yield return body;
        }

        Ring hole = Ring.Hole(mount.HoleDiameter / 2);
        yield return FeatureContribution.Cuts(PartNames.Tub, Solid.Union(
            Shapes.Extrude(Region.Disc(mount.At, hole), -Overlap, mount.HoleDepth),
            Shapes.Taper(
                hole.Coaxial((mount.HoleDiameter / 2) + mount.LeadIn + Overlap, RingSide.Outside), -Overlap,
                hole, mount.LeadIn, mount.At)).Tagged(Tag(0)));
    }
}
