using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features.Mounts;

/// <content>Keyholes: a block with an undercut, its roof drawn in at 45 degrees.</content>
internal sealed partial class MountBodies
{
    /// <inheritdoc />
    public IEnumerable<FeatureContribution> Keyhole(KeyholeMountPlan mount) =>
        mount.Keyholes.SelectMany((hole, number) => Keyhole(mount, hole, number));

    private IEnumerable<FeatureContribution> Keyhole(KeyholeMountPlan mount, KeyholePlan hole, int number)
    {
        Region block = Region.Slot(hole.Entry, hole.Seat, mount.UndercutWidth + (2 * mount.BlockWall), RingSide.Inside);
        foreach (FeatureContribution body in Rising(block, mount.BlockTop, number))
        {
            yield return body;
        }

        Region undercut = Region.Slot(hole.Entry, hole.Seat, mount.UndercutWidth);
        double shoulder = mount.UndercutTop - mount.RoofChamfer;
        Solid roof = OutlineOffsets.Mitred(undercut.Loops[0], -mount.RoofChamfer) is { } ridge
            ? Shapes.Loft(undercut.Loops[0], shoulder, ridge, mount.UndercutTop)
            : Solid.Empty;
        yield return FeatureContribution.Cuts(PartNames.Tub, Solid.Union(
            Shapes.Extrude(Region.Disc(hole.Entry, Ring.Hole(mount.EntryDiameter / 2)), -Overlap, shoulder),
            Shapes.Extrude(Region.Slot(hole.Entry, hole.Seat, mount.SlotWidth), -Overlap, mount.LipTop + Overlap),
            Shapes.Extrude(undercut, mount.LipTop, shoulder),
            roof).Tagged(Tag(number)));
    }
}
