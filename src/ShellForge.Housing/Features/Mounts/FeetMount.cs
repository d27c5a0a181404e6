using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features.Mounts;

/// <content>Recesses for rubber feet.</content>
internal sealed partial class MountBodies
{
    /// <inheritdoc />
    public IEnumerable<FeatureContribution> Feet(FeetMountPlan mount) => mount.At.Select((at, number) => FeatureContribution.Cuts(
        PartNames.Tub,
        Shapes.Extrude(Region.Disc(at, Ring.Hole(mount.RecessDiameter / 2)), -Overlap, mount.Recess).Tagged(Tag(number))));
}
