using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features.Closures;

/// <summary>Bodies and cuts of the closure, one method a form, each beside its builder; a form without one doesn't compile.</summary>
internal sealed partial class ClosureBodies : IClosureVisitor<IEnumerable<FeatureContribution>>
{
    private readonly HousingPlan _plan;

    private ClosureBodies(HousingPlan plan) => _plan = plan;

    /// <summary>What the closure of a plan brings and cuts.</summary>
    public static IEnumerable<FeatureContribution> Of(HousingPlan plan) => plan.Closure.Accept(new ClosureBodies(plan));
}
