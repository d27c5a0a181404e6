using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Planning.Batteries;
using ShellForge.Planning.Plan;
using ShellForge.Planning.SecondBoards;

namespace ShellForge.Planning.Draft;

/// <summary>The tub before posts stand in it: what decides where they may.</summary>
/// <param name="File">The board file.</param>
/// <param name="Basis">Lines and layers.</param>
/// <param name="Shell">Walls and floor.</param>
/// <param name="Levels">Heights of floor and board.</param>
/// <param name="Openings">Ways that stay free.</param>
internal sealed record TubDraft(
    BoardFile File, PrintBasis Basis, ShellPlan Shell, BoardLevels Levels, ImmutableArray<OpeningPlan> Openings)
{
    /// <summary>The tub from what every decision starts from.</summary>
    public TubDraft(Given given, ShellPlan shell, BoardLevels levels, ImmutableArray<OpeningPlan> openings)
        : this(given.File, given.Basis, shell, levels, openings)
    {
    }

    /// <summary>A battery's bay, which posts keep off; null for none.</summary>
    public BatteryBayPlan? Bay { get; init; }

    /// <summary>A second board on the floor, which posts keep off too; null for none.</summary>
    public SecondBoardPlan? SecondBoard { get; init; }

    /// <summary>Places where the board's rim is held.</summary>
    public ImmutableArray<HoldSite> Holds { get; init; } = [];

    /// <summary>What every decision starts from.</summary>
    public Given Given => new(File, Basis);
}
