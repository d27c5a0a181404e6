using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features;

/// <summary>Hands each form of closure to its builder; a form without one doesn't compile.</summary>
internal sealed class Closures : IClosureVisitor<IEnumerable<FeatureContribution>>
{
    private readonly HousingPlan _plan;

    private Closures(HousingPlan plan) => _plan = plan;

    /// <summary>What the closure of a plan brings and cuts.</summary>
    public static IEnumerable<FeatureContribution> Of(HousingPlan plan) => plan.Closure.Accept(new Closures(plan));

    /// <inheritdoc />
    public IEnumerable<FeatureContribution> Snap(SnapClosurePlan closure) => SnapBead.Of(_plan, closure);

    /// <inheritdoc />
    public IEnumerable<FeatureContribution> Screws(ScrewClosurePlan closure) => ClosurePosts.Of(_plan, closure);

    /// <inheritdoc />
    public IEnumerable<FeatureContribution> Twist(TwistClosurePlan closure) => TwistLock.Of(_plan, closure);
}
