using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features.Openings;

/// <summary>Bodies and cuts of an opening, one method a form, each in a file of its own.</summary>
/// <param name="plan">The whole plan.</param>
/// <param name="number">Number of the opening, for its face tags.</param>
internal sealed partial class OpeningBodies(HousingPlan plan, int number) : IOpeningVisitor<IEnumerable<FeatureContribution>>
{
    private const double PastWall = FeatureContribution.PastWall;

    /// <summary>What all openings bring and cut.</summary>
    public static IEnumerable<FeatureContribution> Of(HousingPlan plan) =>
        plan.Openings.SelectMany((opening, number) => opening.Accept(new OpeningBodies(plan, number)));
}
