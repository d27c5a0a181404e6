using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features.Exits;

/// <content>A hole through the floor, its edges broken by cones, with a window and a slot where a plug has to pass.</content>
internal sealed partial class CableExits
{
    /// <inheritdoc />
    public IEnumerable<FeatureContribution> Floor(FloorExitPlan exit)
    {
        const double past = FeatureContribution.Overlap;
        Solid cut = Shapes.Extrude(exit.Opening, -PastWall, exit.FloorTop + PastWall);
        if (exit.EdgeChamfer > 0)
        {
            Ring narrow = Ring.Hole(exit.HoleDiameter / 2);
            Ring wide = narrow.Coaxial((exit.HoleDiameter / 2) + exit.EdgeChamfer + past, narrow.Side);
            cut = cut.And(
                Shapes.Taper(wide, -past, narrow, exit.EdgeChamfer, exit.Place),
                Shapes.Taper(narrow, exit.FloorTop - exit.EdgeChamfer, wide, exit.FloorTop + past, exit.Place));
        }

        yield return FeatureContribution.Cuts(PartNames.Tub, cut.Tagged(Tag(0)));
    }
}
