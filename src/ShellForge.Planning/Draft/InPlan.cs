using System.Collections.Immutable;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Draft;

/// <summary>What is settled in plan with the closure, before any height is.</summary>
/// <param name="Closure">How cover and tub hold together.</param>
/// <param name="Shell">Walls, bulges for closure screws included.</param>
/// <param name="Openings">Openings for parts on the board, in plan.</param>
/// <param name="Lip">The cover's lip, as long as the closure needs it.</param>
/// <param name="Hold">What holds the board's rim.</param>
internal sealed record InPlan(
    ClosureTraits Closure, ShellPlan Shell, ImmutableArray<OpeningInPlan> Openings, LipSection Lip, HoldInPlan Hold)
{
    /// <summary>What walls and lip leave of the cover.</summary>
    public CoverRoom Room { get; } = CoverRoom.Of(Shell, Lip);
}
