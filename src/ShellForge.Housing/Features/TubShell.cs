using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features;

/// <summary>
/// Floor and walls of the tub. The floor reaches half into the walls, so that the two overlap and share no upright face:
/// <code>
///   ██                  ██  parting line
///   ██                  ██
///   ██▓▓▓▓▓▓▓▓▓▓▓▓▓▓▓▓▓▓██  floor top
///   ◣█▓▓▓▓▓▓▓▓▓▓▓▓▓▓▓▓▓▓█◢  0, chamfered against elephant's foot, or rounded
/// </code>
/// </summary>
internal static class TubShell
{
    /// <summary>The tub's body and its outer edge.</summary>
    public static IEnumerable<FeatureContribution> Of(HousingPlan plan)
    {
        ShellPlan shell = plan.Shell;
        yield return FeatureContribution.Adds(PartNames.Tub, Shapes
            .Extrude(PostRoom.Of(shell), 0, plan.Stack.FloorTop).Tagged(FaceNames.Tag(FaceFeature.Floor)));
        foreach (Region wall in shell.Walls.Parts)
        {
            // The wall round the bore is the one that does not reach the outline.
            FaceFeature name = wall.Bounds.Max.X < shell.Cavity.Bounds.Max.X ? FaceFeature.BoreWall : FaceFeature.Wall;
            yield return FeatureContribution.Adds(
                PartNames.Tub, Shapes.Extrude(wall, 0, plan.Stack.PartingLine).Tagged(FaceNames.Tag(name)));
        }

        if (OuterEdge.Cutter(shell, shell.FloorEdge, shell.FloorEdgeInBore) is { } cutter)
        {
            yield return FeatureContribution.Cuts(PartNames.Tub, cutter);
        }
    }
}
