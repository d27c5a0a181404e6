using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
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

        Point2 entry = Lattice.Snap(hole.Entry), seat = Lattice.Snap(hole.Seat);
        Region undercut = Region.Slot(entry, seat, mount.UndercutWidth);
        double shoulder = mount.UndercutTop - mount.RoofChamfer;
        Solid roof = OutlineOffsets.Mitred(undercut.Loops[0], -mount.RoofChamfer) is { } ridge
            ? Shapes.Loft(undercut.Loops[0], shoulder, ridge, mount.UndercutTop)
            : Solid.Empty;
        yield return FeatureContribution.Cuts(PartNames.Tub, Solid.Union(
            Shapes.Extrude(Entry(undercut.Loops[0], entry, seat), -Overlap, shoulder),
            Shapes.Extrude(Region.Slot(entry, seat, mount.SlotWidth), -Overlap, mount.LipTop + Overlap),
            Shapes.Extrude(undercut, mount.LipTop, shoulder),
            roof).Tagged(Tag(number)));
    }

    // The entry is as wide as the undercut, and has its corners: two polygons of one circle would leave teeth.
    private static Region Entry(ImmutableArray<Point2> undercut, Point2 entry, Point2 seat)
    {
        double tangent = 2 * Lattice.Step * Point2.Distance(entry, seat);
        bool IsOfEnd(int i) => Point2.Dot(undercut[i % undercut.Length] - entry, seat - entry) <= tangent;
        int first = Enumerable.Range(0, undercut.Length).First(i => IsOfEnd(i) && !IsOfEnd(i + undercut.Length - 1));
        Point2[] half = [.. Enumerable.Range(first, undercut.Length).TakeWhile(IsOfEnd).Select(i => undercut[i % undercut.Length])];
        return Region.Polygon(
            [.. half, .. half.Where(p => Point2.Dot(p - entry, seat - entry) < -tangent).Select(p => entry + entry - p)]);
    }
}
