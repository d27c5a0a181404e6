using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features.Exits;

/// <summary>Bodies and cuts of the exit for a soldered cable, one method a form, each in a file of its own.</summary>
/// <param name="plan">The whole plan.</param>
internal sealed partial class CableExits(HousingPlan plan) : ICableExitVisitor<IEnumerable<FeatureContribution>>
{
    private const double PastWall = FeatureContribution.PastWall;

    /// <summary>The exit's bodies and cuts; none without an exit.</summary>
    public static IEnumerable<FeatureContribution> Of(HousingPlan plan) => plan.CableExit?.Accept(new CableExits(plan)) ?? [];
}
