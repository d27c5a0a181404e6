using ShellForge.Board.Description;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Gauges;

/// <summary>Features of the housing by what the maker knows them by: the name on the board.</summary>
internal static class BoardNames
{
    /// <summary>A boss by the hole over it, or by what it serves.</summary>
    /// <param name="boss">The boss.</param>
    /// <param name="board">The board.</param>
    public static string Of(BossPlan boss, CircuitBoard board) =>
        board.Holes.FirstOrDefault(hole => hole.At == boss.At) is { } hole ? $"the boss of {hole.Name}"
        : boss.Use == BossUse.Rest ? "a rest under the board's rim"
        : boss.Use == BossUse.SecondBoard ? "a post of the second board"
        : boss.Use == BossUse.Clamp ? "the boss of a screw of the clamp ring"
        : "the boss of a cover screw";
}
