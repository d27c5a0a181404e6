using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features.Exits;

/// <summary>Bodies and cuts of the exit for a soldered cable, one method a form, each in a file of its own.</summary>
/// <param name="plan">The whole plan.</param>
internal sealed partial class CableExits(HousingPlan plan) : ICableExitVisitor<IEnumerable<FeatureContribution>>
{
    // Cutters start this far inside a wall or floor and end this far outside it, mm: walls are curved.
    private const double PastWall = 0.6;

    /// <summary>The exit's bodies and cuts; none without an exit.</summary>
    public static IEnumerable<FeatureContribution> Of(HousingPlan plan) => plan.CableExit?.Accept(new CableExits(plan)) ?? [];
}
