using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features.Holders;

/// <summary>Bodies and cuts of what holds the board's rim, one method a form, each in a file of its own.</summary>
/// <param name="plan">The whole plan.</param>
internal sealed partial class HolderBodies(HousingPlan plan) : IHolderVisitor<IEnumerable<FeatureContribution>>
{
    private const double Overlap = FeatureContribution.Overlap;

    /// <summary>What it does to the parts; nothing where the closed housing holds the board.</summary>
    public static IEnumerable<FeatureContribution> Of(HousingPlan plan) => plan.Hold.Holder?.Accept(new HolderBodies(plan)) ?? [];

    private static FaceTag Tag(int number) => FaceNames.Tag(FaceFeature.Holder, number);
}
