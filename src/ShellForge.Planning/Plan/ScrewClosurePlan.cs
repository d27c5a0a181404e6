using System.Collections.Immutable;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Hands;

namespace ShellForge.Planning.Plan;

/// <summary>Screws through the cover into inserts.</summary>
public sealed record ScrewClosurePlan : ClosurePlan
{
    /// <summary>Diameter of the cover's posts round the screws, mm.</summary>
    public required double PostDiameter { get; init; }

    /// <summary>z of the posts' lower end, where they meet the bosses.</summary>
    public required double PostBottom { get; init; }

    /// <summary>Those posts that stand free of the walls, in plan.</summary>
    public required Region Posts { get; init; }

    /// <summary>
    /// Height of each of the bridges that lead from the counterbore to the round hole, mm: one printed layer, in which lines cross the
    /// counterbore without support.
    /// </summary>
    public required double BridgeHeight { get; init; }

    /// <summary>By how much a layer under the head hangs over the one before at the most, mm.</summary>
    public required double BridgeStepOut { get; init; }

    /// <inheritdoc />
    public override bool Reopens => true;

    /// <inheritdoc />
    public override bool TurnsCover => false;

    /// <inheritdoc />
    public override ClosureEntry? Entry => null;

    /// <inheritdoc />
    public override Region FreePosts => Posts;

    /// <inheritdoc />
    public override string Faces => "a post for a closure screw";

    /// <inheritdoc />
    public override ImmutableArray<ShoppingItem> Shopping => [];

    /// <inheritdoc />
    public override string WayOn(HousingPlan plan) => ClosingHands.RibWay(plan);

    /// <inheritdoc />
    public override IEnumerable<HandStep> HandSteps(HousingPlan plan)
    {
        ScrewJointPlan[] screws = [.. plan.Screws.Where(screw => screw.Use == ScrewUse.Closure)];
        string driver = $"driver for {screws[0].Screw.Thread} screws";
        string through = plan.Bosses.Any(boss => boss.Use == BossUse.Both) ? " They go through the board and hold it too." : "";
        yield return ClosingHands.Close(plan,
            $"Drive {ClosingHands.Screws(screws)} from the front, crosswise, finger-tight and an eighth of a turn.{through}") with
        {
            Tools = [driver],
            Things = [.. screws.Select(ClosingHands.Thing)],
        };
        string blade = plan.PryNotches.IsEmpty ? "" : "; a blade in the notches helps";
        yield return ClosingHands.Open(plan,
            $"Take the cover's {HandWords.Count(screws.Length, "screw", "screws")} out and lift it{blade}.") with
        {
            Tools = [driver],
            Things = [.. screws.Select(ClosingHands.Thing)],
        };
    }

    /// <inheritdoc />
    public override T Accept<T>(IClosureVisitor<T> visitor) => visitor.Screws(this);
}

/// <content>This form's visit.</content>
public partial interface IClosureVisitor<out T>
{
    /// <summary>Screws into inserts.</summary>
    T Screws(ScrewClosurePlan closure);
}
