using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features.Mounts;

/// <content>The stand: its band, and two flat cheeks that are its straight sides drawn up.</content>
internal sealed partial class MountBodies
{
    /// <inheritdoc />
    public IEnumerable<FeatureContribution> Stand(StandMountPlan mount)
    {
        double inner = mount.HalfWidth - mount.Wall;
        Solid stand = Shapes.Extrude(mount.Band, 0, mount.BandHeight).And(
            Across(mount.LeftSide, -mount.HalfWidth, -inner), Across(mount.RightSide, inner, mount.HalfWidth));
        yield return FeatureContribution.Adds(PartNames.Stand, stand.Moved(mount.ToHousing).Tagged(Tag(0)));
        if (mount.CableSlot is var (width, sill))
        {
            double back = mount.Depth / 2;
            yield return FeatureContribution.Cuts(
                PartNames.Stand,
                Shapes.Box(new Point3(-width / 2, back - (2 * mount.Wall), sill), new Point3(width / 2, back + 1, mount.Height))
                    .Moved(mount.ToHousing).Tagged(Tag(0)));
        }

        foreach (Solid chamfer in BedChamfers.OfBody(mount.Band, 0, mount.BedChamfer, towardsViewer: false))
        {
            yield return FeatureContribution.Cuts(PartNames.Stand, chamfer.Moved(mount.ToHousing).Tagged(Tag(0)));
        }
    }

    // A side view drawn in (y, z), from one x to another.
    private static Solid Across(Region side, double fromX, double toX) =>
        Shapes.Extrude(side, fromX, toX).Moved(OutwardFrame.Facing(Angle.Zero));
}
