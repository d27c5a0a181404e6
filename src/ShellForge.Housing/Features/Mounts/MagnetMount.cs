using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features.Mounts;

/// <content>Magnets: pockets in collars, and a pit beside each that stands for the marked pole.</content>
internal sealed partial class MountBodies
{
    /// <inheritdoc />
    public IEnumerable<FeatureContribution> Magnets(MagnetMountPlan mount) =>
        mount.At.SelectMany((at, number) => Pocket(mount, at, number));

    private IEnumerable<FeatureContribution> Pocket(MagnetMountPlan mount, Point2 at, int number)
    {
        foreach (FeatureContribution body in Rising(Region.Disc(at, Ring.Peg(mount.CollarDiameter / 2)), mount.Rim, number))
        {
            yield return body;
        }

        double floor = plan.Stack.FloorTop;
        Region pocket = Region.Disc(at, Ring.Hole(mount.PocketDiameter / 2));
        Region mark = Region.Disc(
            at + Point2.Polar(((mount.CollarDiameter + mount.MarkDiameter) / 2) + Overlap, Angle.Of(Point2.Origin - at)),
            Ring.Hole(mount.MarkDiameter / 2));
        yield return FeatureContribution.Cuts(PartNames.Tub, Solid.Union(
            Shapes.Extrude(pocket, mount.Skin, mount.Rim + Overlap),
            Shapes.Extrude(mark, floor - (2 * Overlap), floor + Overlap)).Tagged(Tag(number)));
    }
}
