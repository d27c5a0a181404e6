using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features.Exits;

/// <summary>Bodies and cuts of the exit for a soldered cable, one method a form, each in a file of its own.</summary>
/// <param name="plan">The whole plan.</param>
/// <param name="number">Number of the exit among those of the plan.</param>
internal sealed partial class CableExits(HousingPlan plan, int number) : ICableExitVisitor<IEnumerable<FeatureContribution>>
{
    private const double PastWall = FeatureContribution.PastWall;

    /// <summary>The bodies and cuts of all exits.</summary>
    public static IEnumerable<FeatureContribution> Of(HousingPlan plan) =>
        plan.CableExits.SelectMany((exit, number) => exit.Accept(new CableExits(plan, number)));

    private FaceTag Tag(int face) => FaceNames.Tag(FaceFeature.CableExit, (CableExitPlan.FacesEach * number) + face);
}
